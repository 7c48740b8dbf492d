/**
 * Logarithm of the gamma function, and what Stirling's formula leaves of it.
 *
 * Equation    ln G(a) = (a - 1/2) ln a - a + ln(2 pi)/2 + s(a)                                                   (1)
 *             s(a) = 1/(12 a) - 1/(360 a^3) + 1/(1260 a^5) - ...                             [abramowitz1972] 6.1.41
 * Validity    a > 0 (asserted); relative error below 1e-14
 * Numerics    below a = 16 the recurrence ln G(a) = ln G(a + n) - ln(a (a+1) ... (a+n-1)) leads into the series
 * Check       published/special-functions.test.ts
 */
import { requirePositive } from "./require-range.ts";

const SERIES_FROM = 16;
/** B_2k / (2k (2k - 1)) */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360_360, 1 / 156, -3617 / 122_400];

export function logGamma(a: number): number {
  requirePositive("argument of the gamma function", a);
  let shift = 0;
  let product = 1;
  while (a + shift < SERIES_FROM) {
    product *= a + shift;
    shift++;
  }
  const b = a + shift;
  return (b - 0.5) * Math.log(b) - b + 0.5 * Math.log(2 * Math.PI) + stirlingSeries(b) - Math.log(product);
}

/** s(a) of (1) for any a > 0. */
export function stirlingCorrection(a: number): number {
  if (a >= SERIES_FROM) return stirlingSeries(a);
  return logGamma(a) - ((a - 0.5) * Math.log(a) - a + 0.5 * Math.log(2 * Math.PI));
}

function stirlingSeries(a: number): number {
  const inverseSquare = 1 / (a * a);
  let sum = 0;
  for (let k = STIRLING.length - 1; k >= 0; k--) sum = sum * inverseSquare + STIRLING[k]!;
  return sum / a;
}

/** ln(x/x0) - (x - x0)/x0: the fall of a likelihood away from its peak, with all its digits near the peak and far from it. */
export function logRatioMinus(x: number, x0: number): number {
  const u = (x - x0) / x0;
  if (Math.abs(u) > 0.3) return Math.log(x / x0) - u;
  // ln(1+u) = 2 artanh(y), y = u/(2+u), hence ln(1+u) - u = 2 (y^3/3 + y^5/5 + ...) - u y
  const y = u / (2 + u);
  const y2 = y * y;
  let term = y * y2;
  let sum = 0;
  for (let k = 3; Math.abs(term) > 1e-18 * Math.abs(u) && k < 80; k += 2) {
    sum += term / k;
    term *= y2;
  }
  return 2 * sum - u * y;
}
