/**
 * A smooth unknown function as a few columns: a Gaussian process on a grid of knots.
 *
 * Equation    f(x) = k(x, Z) L'^-1 beta, L L' = k(Z, Z), beta ~ N(0, 1); k(x, z) = s^2 prod exp(-(x_d - z_d)^2 / 2 l_d^2)
 * Symbols     s amplitude (sd) | l_d length in dimension d | Z knots, spaced one length apart
 * Accuracy    with knots a length apart the process keeps at least 97 % of its variance between knots (tested)
 * Source      [rasmussen2006] 8.3.1 (subset of regressors)
 */
import { cholesky, solveLower } from "../numerics/index.ts";

export type SmoothSpec = {
  readonly amplitude: number;
  /** per dimension: length scale */
  readonly lengths: readonly number[];
  /** per dimension: values that the job visits, used to place the knots */
  readonly spans: readonly (readonly [low: number, high: number])[];
};

export type SmoothFunction = {
  readonly columns: number;
  readonly row: (x: readonly number[], out: Float64Array, offset: number, factor: number) => void;
};

const MOST_KNOTS = [12, 5] as const; // in one dimension, in each of two

export function smoothFunction(spec: SmoothSpec): SmoothFunction {
  const most = MOST_KNOTS[spec.spans.length === 1 ? 0 : 1];
  const axes = spec.spans.map(([low, high], d) => knotsOn(low, high, spec.lengths[d]!, most));
  const knots = axes.length === 1 ? axes[0]!.map((z) => [z]) : axes[0]!.flatMap((z0) => axes[1]!.map((z1) => [z0, z1]));
  const n = knots.length;
  const gram = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) gram[i * n + j] = kernel(spec, knots[i]!, knots[j]!);
    gram[i * n + i] = gram[i * n + i]! + 1e-6 * spec.amplitude ** 2;
  }
  if (!cholesky(gram, n)) throw new Error("Assertion failed: knots of a smooth function coincide");
  const work = new Float64Array(n);
  return {
    columns: n,
    row: (x, out, offset, factor) => {
      for (let j = 0; j < n; j++) work[j] = kernel(spec, x, knots[j]!);
      solveLower(gram, n, work);
      for (let j = 0; j < n; j++) out[offset + j] = out[offset + j]! + factor * work[j]!;
    },
  };
}

function kernel(spec: SmoothSpec, x: readonly number[], z: readonly number[]): number {
  let exponent = 0;
  for (let d = 0; d < x.length; d++) exponent += ((x[d]! - z[d]!) / spec.lengths[d]!) ** 2;
  return spec.amplitude ** 2 * Math.exp(-0.5 * exponent);
}

function knotsOn(low: number, high: number, length: number, most: number): number[] {
  const n = Math.max(2, Math.min(most, Math.ceil((high - low) / length) + 1));
  const margin = 0.25 * length;
  return Array.from({ length: n }, (_, i) => low - margin + ((high - low + 2 * margin) * i) / (n - 1));
}
