/**
 * How well a shift of the witnesses fits what was recorded, with the air of every point and the healthy unknowns
 * integrated out.
 *
 * Equation    Q_k = R_k^-1 - R_k^-1 a a' R_k^-1 / (a' R_k^-1 a)                        the air u_k eliminated (flat)
 *             P   = Q - Q 1 C_r 1' Q,  C_r = (D^-1 + sum_r Q_k)^-1                     what a region shares eliminated
 *             H   = I + Phi' P Phi + standing rows                                    unknowns beta
 *             ln evidence = -1/2 [ e'P e - e'P Phi H^-1 Phi'P e + ln|H| + sum_r ln|I + D sum Q| + sum_k ln|R_k| + ln(a'R_k^-1 a) ]
 *                           + ln P(one-sided quantities keep their sign)
 * Symbols     e = y - shift | a how the witness follows the air (1, or m/(m - L) past a leak) | R_k, D, Phi as in tally-model
 * Validity    a point with one witness says nothing and is left out
 * Source      [rasmussen2006] 2.7 (explicit basis with vague prior); same value as the dense formula (tested)
 */
import { cholesky, choleskyInverse, choleskySolve, dot, logDeterminant } from "../numerics/index.ts";
import { logSignsKept, type OneSided, oneSidedForms } from "./one-sided.ts";
import { eliminateAir, type PointAlgebra } from "./point-algebra.ts";
import type { TallyModel } from "./tally-model.ts";
import { unknownPrecision } from "./unknown-precision.ts";

export type Prepared = {
  readonly model: TallyModel;
  readonly algebra: PointAlgebra;
  /** R*W*W: C_r */
  readonly shared: Float64Array;
  /** B*B Cholesky factor of H */
  readonly factor: Float64Array;
  readonly oneSided: OneSided;
  /** everything in the evidence that does not depend on the shift */
  readonly constant: number;
};

/** A cause's prediction: shift of each witness at each point (K*W), and of the standing observations. */
export type Shift = { readonly witnesses: Float64Array; readonly standing: readonly number[] };

/** `response` (K*W) holds a; null where every witness follows the air one to one. */
export function prepare(model: TallyModel, response: Float64Array | null): Prepared {
  const w = model.witnesses.length;
  const b = model.columns;
  const algebra = eliminateAir(model, response);
  const { shared, logDeterminants } = eliminateRegions(model, algebra);
  const h = unknownPrecision(model, algebra, shared);
  const factor = h.slice();
  if (!cholesky(factor, b)) throw new Error("Assertion failed: the precision of the unknowns is not positive definite");
  const bounded = model.nonNegative.length > 0 || model.bounds.length > 0;
  const constant = -0.5 * (algebra.logDeterminants + logDeterminants + logDeterminant(factor, b));
  // H^-1 is needed here only where something must keep its sign.
  const oneSided = oneSidedForms(model, algebra, bounded ? choleskyInverse(factor, b) : null, response, w);
  return { model, algebra, shared, factor, oneSided, constant };
}

export function logEvidence(prepared: Prepared, shift: Shift | null): number {
  const { normaliser, fit, signs } = evidenceParts(prepared, shift);
  return normaliser + fit + signs;
}

/** ln evidence = normaliser (no data in it) + fit (the quadratic form) + signs (that one-sided quantities keep theirs). */
export type EvidenceParts = { readonly normaliser: number; readonly fit: number; readonly signs: number };

export function evidenceParts(prepared: Prepared, shift: Shift | null): EvidenceParts {
  const { model, factor, oneSided, constant } = prepared;
  const { quadratic, projected } = project(prepared, shift);
  const beta = projected.slice();
  choleskySolve(factor, model.columns, beta);
  return {
    normaliser: constant,
    fit: -0.5 * (quadratic - dot(projected, beta)),
    signs: logSignsKept(oneSided, beta, shift?.witnesses ?? null),
  };
}

/** e'Pe and Phi'Pe, standing rows included. */
export function project(prepared: Prepared, shift: Shift | null): { quadratic: number; projected: Float64Array } {
  const { model } = prepared;
  const e = residuals(model, shift);
  const pe = applyPrecision(prepared, e);
  const b = model.columns;
  const w = model.witnesses.length;
  const projected = new Float64Array(b);
  let quadratic = 0;
  for (let row = 0; row < e.length; row++) {
    const value = pe[row]!;
    if (value === 0) continue;
    quadratic += e[row]! * value;
    const at = row * b;
    for (const c of model.moving[row % w]!) projected[c] = projected[c]! + model.basis[at + c]! * value;
  }
  model.standing.forEach((observation, i) => {
    const r = observation.reading - (shift?.standing[i] ?? 0);
    quadratic += (r * r) / observation.variance;
    for (let c = 0; c < b; c++) projected[c] = projected[c]! + (observation.basis[c]! * r) / observation.variance;
  });
  return { quadratic, projected };
}

export function residuals(model: TallyModel, shift: Shift | null): Float64Array {
  const e = model.y.slice();
  if (shift !== null)
    for (let i = 0; i < e.length; i++) e[i] = model.present[i] === 1 ? e[i]! - shift.witnesses[i]! : 0;
  return e;
}

/** P x = Q x - Q C_r sum_r Q x */
export function applyPrecision(prepared: Prepared, x: Float64Array): Float64Array {
  const { model, algebra, shared } = prepared;
  const w = model.witnesses.length;
  const out = new Float64Array(x.length);
  const sums = new Float64Array(model.regions * w);
  for (let k = 0; k < model.points.length; k++) {
    const r = model.region[k]! * w;
    for (let p = 0; p < w; p++) {
      let sum = 0;
      for (let q = 0; q < w; q++) sum += algebra.precision[(k * w + p) * w + q]! * x[k * w + q]!;
      out[k * w + p] = sum;
      sums[r + p] = sums[r + p]! + sum;
    }
  }
  const corrections = new Float64Array(sums.length);
  for (let r = 0; r < model.regions; r++) {
    for (let p = 0; p < w; p++)
      for (let q = 0; q < w; q++)
        corrections[r * w + p] = corrections[r * w + p]! + shared[(r * w + p) * w + q]! * sums[r * w + q]!;
  }
  for (let k = 0; k < model.points.length; k++) {
    const r = model.region[k]! * w;
    for (let p = 0; p < w; p++) {
      let sum = 0;
      for (let q = 0; q < w; q++) sum += algebra.precision[(k * w + p) * w + q]! * corrections[r + q]!;
      out[k * w + p] = out[k * w + p]! - sum;
    }
  }
  return out;
}

/** C_r = L (I + L' sum Q L)^-1 L', L L' = D, for every region, and the sum of the logs of the determinants. */
function eliminateRegions(model: TallyModel, algebra: PointAlgebra): { shared: Float64Array; logDeterminants: number } {
  const w = model.witnesses.length;
  const { discrepancyFactor: l } = model;
  const sums = new Float64Array(model.regions * w * w);
  for (let k = 0; k < model.points.length; k++) {
    const at = model.region[k]! * w * w;
    for (let i = 0; i < w * w; i++) sums[at + i] = sums[at + i]! + algebra.precision[k * w * w + i]!;
  }
  let logDeterminants = 0;
  for (let r = 0; r < model.regions; r++) {
    const block = sums.subarray(r * w * w, (r + 1) * w * w);
    block.set(between(transposed(l, w), block, w));
    for (let p = 0; p < w; p++) block[p * w + p] = block[p * w + p]! + 1;
    if (!cholesky(block, w)) throw new Error("Assertion failed: shared discrepancy of a region");
    logDeterminants += logDeterminant(block, w);
    block.set(between(l, choleskyInverse(block, w), w));
  }
  return { shared: sums, logDeterminants };
}

/** A B A' */
function between(a: Float64Array, b: Float64Array, n: number): Float64Array {
  const half = product(a, b, n);
  return product(half, transposed(a, n), n);
}

function product(a: Float64Array, b: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let p = 0; p < n; p++)
    for (let c = 0; c < n; c++) {
      const factor = a[p * n + c]!;
      if (factor === 0) continue;
      for (let q = 0; q < n; q++) out[p * n + q] = out[p * n + q]! + factor * b[c * n + q]!;
    }
  return out;
}

function transposed(a: Float64Array, n: number): Float64Array {
  return a.map((_, at) => a[(at % n) * n + Math.floor(at / n)]!);
}
