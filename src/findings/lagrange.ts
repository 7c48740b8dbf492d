/**
 * Four-point Lagrange weights on evenly spaced nodes 0..n-1 (n >= 4): the value at x is sum_a w_a f(first + a).
 * Source   [abramowitz1972] 25.2.13
 */
export const LAGRANGE_POINTS = 4;

export function lagrange(x: number, n: number, weights: Float64Array): number {
  const first = Math.min(Math.max(Math.floor(x) - 1, 0), n - LAGRANGE_POINTS);
  const p = x - first;
  weights[0] = (-(p - 1) * (p - 2) * (p - 3)) / 6;
  weights[1] = (p * (p - 2) * (p - 3)) / 2;
  weights[2] = (-p * (p - 1) * (p - 3)) / 2;
  weights[3] = (p * (p - 1) * (p - 2)) / 6;
  return first;
}
