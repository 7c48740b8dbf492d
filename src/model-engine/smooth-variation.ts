/**
 * A seeded smooth function of one or two variables: how one engine or one meter differs from its drawing.
 *
 * Equation    f(x) = a sqrt(2/K) sum_k cos(w_k . x + phi_k),  w_k ~ N(0, 1/l^2), phi_k ~ U(0, 2 pi)
 * Symbols     a standard deviation of f at any x | l length scale of each variable | K number of waves
 * Assumes     K = 24 waves: close to a Gaussian process with a squared-exponential kernel, and plain data
 * Source      [rahimi2007]                                                   Check smooth-variation.test.ts
 */
import type { SeededRandom } from "../numerics/index.ts";

const WAVES = 24;

export type SmoothVariation = {
  readonly amplitude: number;
  /** one row for each wave: the frequency of each variable, then the phase */
  readonly waves: readonly (readonly number[])[];
};

export const NO_VARIATION: SmoothVariation = { amplitude: 0, waves: [] };

export function drawVariation(
  random: SeededRandom,
  amplitude: number,
  lengthScales: readonly number[],
): SmoothVariation {
  const waves = Array.from({ length: WAVES }, () => [
    ...lengthScales.map((length) => random.normal() / length),
    2 * Math.PI * random.uniform(),
  ]);
  return { amplitude, waves };
}

/** The value at `x`, one number for each length scale given when drawn. */
export function variationAt(variation: SmoothVariation, ...x: readonly number[]): number {
  if (variation.amplitude === 0) return 0;
  let sum = 0;
  for (const wave of variation.waves) {
    let angle = wave[x.length]!;
    for (let i = 0; i < x.length; i++) angle += wave[i]! * x[i]!;
    sum += Math.cos(angle);
  }
  return variation.amplitude * Math.sqrt(2 / variation.waves.length) * sum;
}
