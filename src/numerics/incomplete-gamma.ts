/**
 * Regularised incomplete gamma functions P (lower) and Q (upper), each computed directly so that a tail is never 1 minus something.
 *
 * Equation    P(a, x) = x^a e^-x / G(a+1) (1 + x/(a+1) + x^2/((a+1)(a+2)) + ...)                                  (1)
 *             Q(a, x) = x^a e^-x / G(a) (1/(x + 1 - a - 1 (1-a)/(x + 3 - a - 2 (2-a)/(x + 5 - a - ...))))          (2)
 * Validity    a > 0, x >= 0 (asserted); relative error below 1e-12 up to a = 1e4, tails included
 * Numerics    (1) below x = a + 1, (2) above; the leading factor is written around its peak, which keeps its digits at large a
 * Source      [abramowitz1972] 6.5.29, 6.5.31                                Check  published/special-functions.test.ts
 */
import { logRatioMinus, stirlingCorrection } from "./log-gamma.ts";
import { requirePositive, requireWithin } from "./require-range.ts";

export function lowerGamma(a: number, x: number): number {
  checkArguments(a, x);
  if (x === 0) return 0;
  return x < a + 1 ? lowerBySeries(a, x) : 1 - upperByFraction(a, x);
}

export function upperGamma(a: number, x: number): number {
  checkArguments(a, x);
  if (x === 0) return 1;
  return x < a + 1 ? 1 - lowerBySeries(a, x) : upperByFraction(a, x);
}

function lowerBySeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; term > 1e-17 * sum; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return (leadingFactor(a, x) * sum) / a;
}

/** Modified Lentz evaluation of (2). */
function upperByFraction(a: number, x: number): number {
  const tiny = 1e-300;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let h = d;
  for (let n = 1; n < 100_000; n++) {
    const an = -n * (n - a);
    b += 2;
    d = 1 / nonZero(an * d + b, tiny);
    c = nonZero(b + an / c, tiny);
    const factor = d * c;
    h *= factor;
    if (Math.abs(factor - 1) < 1e-16) break;
  }
  return leadingFactor(a, x) * h;
}

/** x^a e^-x / G(a) = sqrt(a/2 pi) exp(a (ln(x/a) - (x - a)/a) - s(a)) */
function leadingFactor(a: number, x: number): number {
  if (a < 1) return Math.exp(a * Math.log(x) - x - (stirlingCorrection(a + 1) + stirlingMain(a + 1) - Math.log(a)));
  return Math.sqrt(a / (2 * Math.PI)) * Math.exp(a * logRatioMinus(x, a) - stirlingCorrection(a));
}

function stirlingMain(a: number): number {
  return (a - 0.5) * Math.log(a) - a + 0.5 * Math.log(2 * Math.PI);
}

function nonZero(value: number, tiny: number): number {
  return Math.abs(value) < tiny ? tiny : value;
}

function checkArguments(a: number, x: number): void {
  requirePositive("shape", a);
  requireWithin("argument", x, 0, Number.MAX_VALUE);
}
