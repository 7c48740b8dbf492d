/**
 * The error function and its complement.
 *
 * Equation    erf(x) = P(1/2, x^2),  erfc(x) = Q(1/2, x^2)  for x >= 0                    [abramowitz1972] 6.5.16, 6.5.17
 * Validity    every finite x; relative error below 1e-13 for erfc up to x = 26, where it underflows
 * Check       published/special-functions.test.ts
 */
import { lowerGamma, upperGamma } from "./incomplete-gamma.ts";

export function erf(x: number): number {
  return x < 0 ? -lowerGamma(0.5, x * x) : lowerGamma(0.5, x * x);
}

export function erfc(x: number): number {
  return x < 0 ? 1 + lowerGamma(0.5, x * x) : upperGamma(0.5, x * x);
}
