/**
 * Exact (Clopper and Pearson) 95 % interval of a share.
 *
 * Equation    low: I_low(k, n - k + 1) = 0.025, high: I_high(k + 1, n - k) = 0.975, I the regularised incomplete beta function
 * Source      [clopper1934]
 */
import { findRoot, incompleteBeta } from "../../src/numerics/index.ts";

export type Share = { readonly count: number; readonly of: number; readonly low: number; readonly high: number };

export function shareOf(count: number, of: number): Share {
  const at = (a: number, b: number, p: number) => {
    const root = findRoot((x) => incompleteBeta({ x, y: 1 - x, a, b }) - p, { low: 0, high: 1 });
    if (root.status !== "found")
      throw new Error("Assertion failed: an incomplete beta function takes every value between 0 and 1");
    return root.root;
  };
  return {
    count,
    of,
    low: count === 0 ? 0 : at(count, of - count + 1, 0.025),
    high: count === of ? 1 : at(count + 1, of - count, 0.975),
  };
}

export function shareText({ count, of, low, high }: Share): string {
  if (of === 0) return "none";
  const percent = (x: number) => (100 * x).toFixed(1);
  return `${percent(count / of)} % (${percent(low)} to ${percent(high)}; n ${of})`;
}
