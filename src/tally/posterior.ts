/**
 * What follows for the air of every point and for the unknowns, given one explanation.
 *
 * Equation    beta = H^-1 Phi'P e, moved and narrowed by the one-sided quantities;  b_r = C_r sum_r Q (e - Phi beta)
 *             u_k = weights' (e - Phi beta - b);  var u_k = 1/(a'R^-1 a) + weights' (Phi V Phi' + D_shared) weights
 * Source      [rasmussen2006] 2.7
 */
import { cholesky, choleskyInverse, choleskySolve } from "../numerics/index.ts";
import { type Prepared, project, residuals, type Shift } from "./likelihood.ts";
import { signMoments } from "./one-sided.ts";

export type Posterior = {
  /** K: ln of the air, kg/s; NaN where the point has no witness */
  readonly logAir: Float64Array;
  readonly variance: Float64Array;
  readonly beta: Float64Array;
  /** K*W: what the unknowns and the region's share take from each witness: y - this - shift is the witness's word on the air */
  readonly correction: Float64Array;
};

/** Mean and covariance (B*B) of the unknowns. */
export function unknownPosterior(
  prepared: Prepared,
  shift: Shift | null,
): { readonly beta: Float64Array; readonly covariance: Float64Array } {
  const b = prepared.model.columns;
  const { projected: beta } = project(prepared, shift);
  choleskySolve(prepared.factor, b, beta);
  const covariance = choleskyInverse(prepared.factor, b);
  if (prepared.oneSided.forms.length === 0) return { beta, covariance };
  return { beta: keepSigns(prepared, beta, covariance, shift), covariance };
}

export function posterior(prepared: Prepared, shift: Shift | null): Posterior {
  const { model, algebra, shared } = prepared;
  const b = model.columns;
  const w = model.witnesses.length;
  const { beta, covariance } = unknownPosterior(prepared, shift);

  const e = residuals(model, shift);
  const left = new Float64Array(e.length);
  for (let row = 0; row < e.length; row++)
    if (model.present[row] === 1) left[row] = e[row]! - dotRow(model.basis, row * b, beta);
  const regional = regionalShare(prepared, left);
  const k = model.points.length;
  const logAir = new Float64Array(k).fill(Number.NaN);
  const variance = new Float64Array(k).fill(Number.NaN);
  const correction = new Float64Array(k * w);
  const mixed = new Float64Array(b);
  for (let i = 0; i < k; i++) {
    const r = model.region[i]!;
    for (let p = 0; p < w; p++)
      correction[i * w + p] = dotRow(model.basis, (i * w + p) * b, beta) + regional[r * w + p]!;
    if (!(algebra.airPrecision[i]! > 0)) continue;
    mixed.fill(0);
    let u = 0;
    let regionVariance = 0;
    for (let p = 0; p < w; p++) {
      const weight = algebra.weights[i * w + p]!;
      if (weight === 0) continue;
      u += weight * (left[i * w + p]! - regional[r * w + p]!);
      for (let c = 0; c < b; c++) mixed[c] = mixed[c]! + weight * model.basis[(i * w + p) * b + c]!;
      for (let q = 0; q < w; q++) regionVariance += weight * algebra.weights[i * w + q]! * shared[(r * w + p) * w + q]!;
    }
    logAir[i] = u;
    variance[i] = 1 / algebra.airPrecision[i]! + quadratic(covariance, mixed) + regionVariance;
  }
  return { logAir, variance, beta, correction };
}

/** E[beta_c^2] for every unknown: mean squared plus variance; one where the data say nothing. One-sided cuts left aside. */
export function meanSquares(prepared: Prepared, shift: Shift | null): Float64Array {
  const b = prepared.model.columns;
  const { projected: beta } = project(prepared, shift);
  choleskySolve(prepared.factor, b, beta);
  const inverse = choleskyInverse(prepared.factor, b);
  return beta.map((value, c) => value * value + inverse[c * b + c]!);
}

/** Moves beta to where the one-sided quantities keep their sign, and narrows its covariance in place. */
function keepSigns(
  prepared: Prepared,
  beta: Float64Array,
  covariance: Float64Array,
  shift: Shift | null,
): Float64Array {
  const { oneSided, model } = prepared;
  const { means, cut } = signMoments(oneSided, beta, shift?.witnesses ?? null);
  const n = means.length;
  const b = model.columns;
  const gain = gainOf(oneSided.cross, oneSided.covariance, n, b);
  const moved = beta.slice();
  for (let t = 0; t < n; t++) {
    const step = cut.mean[t]! - means[t]!;
    for (let c = 0; c < b; c++) moved[c] = moved[c]! + gain[t]![c]! * step;
  }
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const narrowed = oneSided.covariance[i * n + j]! - cut.covariance[i * n + j]!;
      for (let p = 0; p < b; p++)
        for (let q = 0; q < b; q++)
          covariance[p * b + q] = covariance[p * b + q]! - gain[i]![p]! * narrowed * gain[j]![q]!;
    }
  }
  return moved;
}

/** T rows of cov(beta, t) cov(t)^-1. */
function gainOf(cross: readonly Float64Array[], covariance: Float64Array, n: number, b: number): Float64Array[] {
  const factor = covariance.slice();
  if (!cholesky(factor, n)) throw new Error("Assertion failed: covariance of the one-sided quantities");
  const gain = Array.from({ length: n }, () => new Float64Array(b));
  const column = new Float64Array(n);
  for (let c = 0; c < b; c++) {
    for (let t = 0; t < n; t++) column[t] = cross[t]![c]!;
    choleskySolve(factor, n, column);
    for (let t = 0; t < n; t++) gain[t]![c] = column[t]!;
  }
  return gain;
}

function regionalShare(prepared: Prepared, left: Float64Array): Float64Array {
  const { model, algebra, shared } = prepared;
  const w = model.witnesses.length;
  const sums = new Float64Array(model.regions * w);
  for (let k = 0; k < model.points.length; k++) {
    for (let p = 0; p < w; p++) {
      let sum = 0;
      for (let q = 0; q < w; q++) sum += algebra.precision[(k * w + p) * w + q]! * left[k * w + q]!;
      sums[model.region[k]! * w + p] = sums[model.region[k]! * w + p]! + sum;
    }
  }
  const out = new Float64Array(sums.length);
  for (let r = 0; r < model.regions; r++)
    for (let p = 0; p < w; p++)
      for (let q = 0; q < w; q++) out[r * w + p] = out[r * w + p]! + shared[(r * w + p) * w + q]! * sums[r * w + q]!;
  return out;
}

function dotRow(matrix: Float64Array, at: number, x: Float64Array): number {
  let sum = 0;
  for (let c = 0; c < x.length; c++) sum += matrix[at + c]! * x[c]!;
  return sum;
}

function quadratic(matrix: Float64Array, x: Float64Array): number {
  const n = x.length;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += x[i]! * dotRow(matrix, i * n, x);
  return sum;
}
