/**
 * Sizes of a cause along one side of its prior: evenly spread in the logarithm of their amount from "worth mending" up.
 *
 * Equation    amount: size = +-v;  ratio: size = exp(+-v);  v = exp(t), t uniform between ln v_worth and ln v_largest
 *             v_worth = ln(1 + worthMending) for a ratio
 */
import { fromSi, toSi, unit } from "../quantities/index.ts";
import type { TallyModel } from "../tally/index.ts";
import type { Cause } from "./catalogue.ts";
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
