/**
 * Sizes of a cause along one side of its prior: evenly spread in the logarithm of their amount from "worth mending" up.
 *
 * Equation    amount: size = +-v;  ratio: size = exp(+-v);  v = exp(t), t uniform between ln v_worth and ln v_largest
 *             v_worth = ln(1 + worthMending) for a ratio
 */
import { fromSi, toSi, unit } from "../quantities/index.ts";
import type { CauseEntry } from "./cause.ts";

export type Side = { readonly sign: 1 | -1; readonly share: number; readonly low: number; readonly high: number };

export function sidesOf(cause: CauseEntry): Side[] {
  const worth = amountOf(cause, cause.worthMending);
  const largest = amountOf(cause, cause.largest);
  const all: Side[] = [
    { sign: -1, share: cause.sides[0], low: Math.log(worth), high: Math.log(largest) },
    { sign: 1, share: cause.sides[1], low: Math.log(worth), high: Math.log(largest) },
  ];
  return all.filter((side) => side.share > 0);
}

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
