/** The precision of the unknowns, with air and regional discrepancy eliminated (see likelihood.ts for the whole). */
import { cholesky } from "../numerics/index.ts";
import type { PointAlgebra } from "./point-algebra.ts";
import type { TallyModel } from "./tally-model.ts";

/**
 * H = I + Phi'Q Phi - sum_r S_r' C_r S_r + standing rows, S_r = sum_r Q Phi; its lower triangle, which is all that a Cholesky
 * factor reads. Only columns that move a witness are touched.
 */
export function unknownPrecision(model: TallyModel, algebra: PointAlgebra, shared: Float64Array): Float64Array {
  const w = model.witnesses.length;
  const b = model.columns;
  const { basis, moving } = model;
  const h = new Float64Array(b * b);
  for (let c = 0; c < b; c++) h[c * b + c] = 1;
  const sums = new Float64Array(model.regions * w * b);
  for (let k = 0; k < model.points.length; k++) {
    if (algebra.active[k] === 0) continue;
    for (let p = 0; p < w; p++) {
      const sumAt = (model.region[k]! * w + p) * b;
      for (let q = 0; q < w; q++) {
        const precision = algebra.precision[(k * w + p) * w + q]!;
        if (precision === 0) continue;
        const rowQ = (k * w + q) * b;
        for (const c of moving[q]!) sums[sumAt + c] = sums[sumAt + c]! + precision * basis[rowQ + c]!;
        if (q === p) addSquare(h, b, basis, rowQ, moving[p]!, precision);
        else if (q < p) addProduct(h, b, basis, (k * w + p) * b, moving[p]!, rowQ, moving[q]!, precision);
      }
    }
  }
  subtractRegions(model, h, sums, shared);
  const all = Int32Array.from({ length: b }, (_, c) => c);
  for (const { basis: row, variance } of model.standing) addSquare(h, b, row, 0, all, 1 / variance);
  return h;
}

/** C_r = L L', so S' C S is a sum of squares of the rows of L' S. */
function subtractRegions(model: TallyModel, h: Float64Array, sums: Float64Array, shared: Float64Array): void {
  const w = model.witnesses.length;
  const b = model.columns;
  const row = new Float64Array(b);
  const all = Int32Array.from({ length: b }, (_, c) => c);
  for (let r = 0; r < model.regions; r++) {
    const l = shared.slice(r * w * w, (r + 1) * w * w);
    if (!cholesky(l, w)) throw new Error("Assertion failed: shared discrepancy of a region");
    for (let p = 0; p < w; p++) {
      row.fill(0);
      for (let q = p; q < w; q++) {
        const at = (r * w + q) * b;
        for (let c = 0; c < b; c++) row[c] = row[c]! + l[q * w + p]! * sums[at + c]!;
      }
      addSquare(h, b, row, 0, all, -1);
    }
  }
}

/** Lower triangle of h += factor x x'; x stands in `source` from `at` on, zero but for the columns listed (ascending). */
function addSquare(
  h: Float64Array,
  b: number,
  source: Float64Array,
  at: number,
  columns: Int32Array,
  factor: number,
): void {
  for (let m = 0; m < columns.length; m++) {
    const i = columns[m]!;
    const value = factor * source[at + i]!;
    if (value === 0) continue;
    const row = i * b;
    for (let n = 0; n <= m; n++) {
      const j = columns[n]!;
      h[row + j] = h[row + j]! + value * source[at + j]!;
    }
  }
}

/** Lower triangle of h += factor (x y' + y x'). */
function addProduct(
  h: Float64Array,
  b: number,
  source: Float64Array,
  xAt: number,
  xColumns: Int32Array,
  yAt: number,
  yColumns: Int32Array,
  factor: number,
): void {
  for (let m = 0; m < xColumns.length; m++) {
    const i = xColumns[m]!;
    const value = factor * source[xAt + i]!;
    if (value === 0) continue;
    for (let n = 0; n < yColumns.length; n++) {
      const j = yColumns[n]!;
      const product = value * source[yAt + j]!;
      if (i === j) h[i * b + i] = h[i * b + i]! + 2 * product;
      else if (i > j) h[i * b + j] = h[i * b + j]! + product;
      else h[j * b + i] = h[j * b + i]! + product;
    }
  }
}
