/**
 * Chi-square, Student's t and Fisher's F: lower and upper tails and quantiles. Upper tails are computed directly, never as 1 - lower.
 *
 * Equation    chi2: P(k/2, x/2);   t: I_{t^2/(n+t^2)} halves;   F: I_{d1 F/(d1 F + d2)}(d1/2, d2/2)
 * Validity    degrees of freedom > 0; probabilities strictly between 0 and 1 for quantiles (asserted)
 * Numerics    quantiles by Brent's method on the logarithm of the smaller tail
 * Source      [abramowitz1972] 26.4.19, 26.5.27, 26.6.2                       Check  published/special-functions.test.ts
 */
import { findRoot } from "./find-root.ts";
import { incompleteBeta, upperIncompleteBeta } from "./incomplete-beta.ts";
import { lowerGamma, upperGamma } from "./incomplete-gamma.ts";
import { requirePositive, requireWithin } from "./require-range.ts";

export function chiSquareCdf(x: number, degrees: number): number {
  return x <= 0 ? 0 : lowerGamma(degrees / 2, x / 2);
}

export function chiSquareUpper(x: number, degrees: number): number {
  return x <= 0 ? 1 : upperGamma(degrees / 2, x / 2);
}

export function chiSquareQuantile(p: number, degrees: number): number {
  requirePositive("degrees of freedom", degrees);
  return positiveQuantile(
    p,
    (x) => chiSquareCdf(x, degrees),
    (x) => chiSquareUpper(x, degrees),
    degrees,
  );
}

/** Share of Student's t below t. */
export function studentCdf(t: number, degrees: number): number {
  return t < 0 ? studentUpper(-t, degrees) : 1 - studentUpper(t, degrees);
}

/** Share above t; for t >= 0 directly from the tail. */
export function studentUpper(t: number, degrees: number): number {
  requirePositive("degrees of freedom", degrees);
  if (t < 0) return 1 - studentUpper(-t, degrees);
  const whole = degrees + t * t;
  return 0.5 * incompleteBeta({ a: degrees / 2, b: 0.5, x: degrees / whole, y: (t * t) / whole });
}

export function studentQuantile(p: number, degrees: number): number {
  requireWithin("probability", p, Number.MIN_VALUE, 1 - Number.EPSILON / 2);
  if (p === 0.5) return 0;
  if (p < 0.5) return -studentQuantileUpper(p, degrees);
  return studentQuantileUpper(1 - p, degrees);
}

/** t above which the share q < 1/2 lies. */
function studentQuantileUpper(q: number, degrees: number): number {
  let high = 1;
  while (studentUpper(high, degrees) > q) high *= 2;
  return rootOf((t) => Math.log(studentUpper(t, degrees) / q), high / 2 > 0.5 ? high / 2 : 0, high);
}

export function fisherCdf(f: number, degrees: FisherDegrees): number {
  return f <= 0 ? 0 : incompleteBeta(fisherArguments(f, degrees));
}

export function fisherUpper(f: number, degrees: FisherDegrees): number {
  return f <= 0 ? 1 : upperIncompleteBeta(fisherArguments(f, degrees));
}

export function fisherQuantile(p: number, degrees: FisherDegrees): number {
  return positiveQuantile(
    p,
    (x) => fisherCdf(x, degrees),
    (x) => fisherUpper(x, degrees),
    1,
  );
}

export type FisherDegrees = { readonly numerator: number; readonly denominator: number };

function fisherArguments(f: number, { numerator, denominator }: FisherDegrees) {
  const whole = numerator * f + denominator;
  return { a: numerator / 2, b: denominator / 2, x: (numerator * f) / whole, y: denominator / whole };
}

function positiveQuantile(
  p: number,
  lower: (x: number) => number,
  upper: (x: number) => number,
  scale: number,
): number {
  requireWithin("probability", p, Number.MIN_VALUE, 1 - Number.EPSILON / 2);
  let low = scale;
  let high = scale;
  while (lower(low) > p) low /= 4;
  while (lower(high) < p) high *= 2;
  return p < 0.5
    ? rootOf((x) => Math.log(lower(x) / p), low, high)
    : rootOf((x) => Math.log(upper(x) / (1 - p)), low, high);
}

function rootOf(f: (x: number) => number, low: number, high: number): number {
  const outcome = findRoot(f, { low, high });
  if (outcome.status !== "found") throw new Error(`Assertion failed: no quantile between ${low} and ${high}`);
  return outcome.root;
}
