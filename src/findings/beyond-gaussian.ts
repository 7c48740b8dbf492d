/**
 * What the exact evidence of a size holds beyond the Gaussian of the grid, against healthy.
 *
 * Equation    whole = exact - Gaussian = normaliser + signs + (fit with the cause's own response - fit with response one)
 * Numerics    nought where the grid did not ask for the exact evidence
 */
import type { EvidenceParts } from "../tally/index.ts";
import { LAGRANGE_POINTS } from "./lagrange.ts";

export type ExactNode = EvidenceParts | null;

/** One number a node. */
export type Beyond = {
  readonly whole: Float64Array;
  /** change of the evidence's own normaliser: holds whatever else is at work */
  readonly normaliser: Float64Array;
  /** change of the chance that one-sided quantities keep their sign */
  readonly signs: Float64Array;
};

export function beyondGaussian(
  exact: readonly ExactNode[],
  healthy: EvidenceParts,
  dots: Float64Array,
  band: Float64Array,
): Beyond {
  const of = (value: (parts: EvidenceParts, node: number) => number) => at(exact, value);
  const normaliser = of((p) => p.normaliser - healthy.normaliser);
  const signs = of((p) => p.signs - healthy.signs);
  const fit = of((p, n) => p.fit - healthy.fit - (dots[n]! - 0.5 * band[n * LAGRANGE_POINTS]!));
  return { whole: normaliser.map((v, n) => v + signs[n]! + fit[n]!), normaliser, signs };
}

function at(exact: readonly ExactNode[], value: (parts: EvidenceParts, node: number) => number): Float64Array {
  return Float64Array.from(exact, (parts, n) => (parts === null ? 0 : value(parts, n)));
}
