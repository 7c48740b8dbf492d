/**
 * Sizes of a cause along one side of its prior: from "worth mending" up, the larger the rarer.
 *
 * Equation    amount: size = +-v;  ratio: size = exp(+-v);  v = exp(t), t between ln v_worth and ln v_largest
 *             p(t) = k exp(-k (t - t_worth))/(1 - exp(-k (t_largest - t_worth))), so that p(v) falls with v^-(1 + k)
 *             v_worth = ln(1 + worthMending) for a ratio
 * Symbols     k fall of the catalogue (causes.json)
 */
import { fromSi, toSi, unit } from "../quantities/index.ts";
import type { TallyModel } from "../tally/index.ts";
import { type Cause, SIZES_FALL } from "./catalogue.ts";
import type { CauseEntry } from "./cause.ts";

export type Side = { readonly sign: 1 | -1; readonly share: number; readonly low: number; readonly high: number };

export function sidesOf(cause: Cause, model: TallyModel): Side[] {
  const low = Math.log(amountOf(cause, cause.worthMending));
  const largest = amountOf(cause, cause.largest);
  const upTo = (sign: 1 | -1) => Math.log(Math.min(largest, cause.law.most?.(model, sign) ?? Infinity));
  const all: Side[] = [
    { sign: -1, share: cause.sides[0], low, high: Math.max(upTo(-1), low + LEAST_SPAN) },
    { sign: 1, share: cause.sides[1], low, high: Math.max(upTo(1), low + LEAST_SPAN) },
  ];
  return all.filter((side) => side.share > 0);
}

/** ln p(t) */
export function logSizePrior({ low, high }: Pick<Side, "low" | "high">, t: number): number {
  return Math.log(SIZES_FALL / -Math.expm1(-SIZES_FALL * (high - low))) - SIZES_FALL * (t - low);
}

/** Where hardly any size worth mending is possible at all, the side still holds this much of the scale. */
const LEAST_SPAN = 0.1;

/** Size in SI at t on a side. */
export function sizeAt(cause: CauseEntry, sign: 1 | -1, t: number): number {
  const v = sign * Math.exp(t);
  return cause.kind === "ratio" ? Math.exp(v) : v;
}

/** Size in SI to the unit in which it is reported. */
export function reported(cause: CauseEntry, size: number): number {
  return isDifference(cause) ? size / unit(cause.unit).factor : fromSi(size, unit(cause.unit));
}

function amountOf(cause: CauseEntry, value: number): number {
  if (cause.kind === "ratio") return Math.log1p(value);
  return isDifference(cause) ? value * unit(cause.unit).factor : toSi(value, unit(cause.unit));
}

/** Temperature errors are differences: no offset between scales. */
function isDifference(cause: CauseEntry): boolean {
  return cause.unit === "K";
}
