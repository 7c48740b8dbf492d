/**
 * How sure a fitted curve is along its signal.
 *
 * Equation    u(m)^2 = b^2 g' (J'J)^-1 g,  g = dm/dp                                                            (1)
 * Symbols     m flow | p parameters, J the weighted Jacobian of the fit | b Birge ratio, see fit-curve.ts
 * Validity    inside the domain of the points; the law taken as true
 * Numerics    g by central difference over a thousandth of each parameter's own uncertainty; told at 65 signals
 * Source      [gum2008] 5.2 with the covariance of least squares [birge1932]      Check  fit-curve.test.ts covers the truth
 */
import { flowFunction } from "./curve-form.ts";
import type { Candidate } from "./fit-candidates.ts";

const BAND_POINTS = 65;

export function fitBand(fit: {
  readonly candidate: Candidate;
  readonly vector: Float64Array;
  /** (J'J)^-1 */
  readonly covariance: Float64Array;
  readonly birge: number;
  readonly domain: readonly [number, number];
}): { readonly signal: number[]; readonly sd: number[] } {
  const { candidate, vector, covariance, birge, domain } = fit;
  const k = vector.length;
  const [low, high] = domain;
  const signal = Array.from({ length: BAND_POINTS }, (_, i) => low + ((high - low) * i) / (BAND_POINTS - 1));
  const gradients = Array.from(vector, (value, j) => {
    const h = Math.max(Math.sqrt(covariance[j * k + j]!) * 1e-3, Math.abs(value) * 1e-7, 1e-12);
    const above = flowFunction(candidate.toForm(vector.with(j, value + h)));
    const below = flowFunction(candidate.toForm(vector.with(j, value - h)));
    return signal.map((s) => (above(s) - below(s)) / (2 * h));
  });
  const sd = signal.map((_, i) => {
    let variance = 0;
    for (let a = 0; a < k; a++) {
      for (let b = 0; b < k; b++) variance += gradients[a]![i]! * gradients[b]![i]! * covariance[a * k + b]!;
    }
    return birge * Math.sqrt(Math.max(0, variance));
  });
  return { signal, sd };
}
