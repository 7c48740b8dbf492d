/** For tests only: the evidence from the full covariance, by another library's algebra. */
import { determinant, inverse, Matrix } from "ml-matrix";
import type { TallyModel } from "../../src/tally/index.ts";

/** (L L')_pq */
export function squareOf(factor: Float64Array, w: number, p: number, q: number): number {
  let sum = 0;
  for (let c = 0; c < w; c++) sum += factor[p * w + c]! * factor[q * w + c]!;
  return sum;
}

/**
 * S = R + Phi Phi' + shared discrepancy over the rows that are present, the air of each point flat. Points with one witness are
 * left out: they say nothing.
 */
export function denseEvidence(
  model: TallyModel,
  shift: Float64Array,
  response: Float64Array,
): { readonly value: number; readonly air: number[] } {
  const w = model.witnesses.length;
  const present = (k: number) => model.witnesses.filter((_, j) => model.present[k * w + j] === 1).length;
  const points = model.points.map((_, k) => k).filter((k) => present(k) > 1);
  const rows = points
    .flatMap((k) => model.witnesses.map((_, j) => k * w + j))
    .filter((row) => model.present[row] === 1);
  const s = Matrix.zeros(rows.length, rows.length);
  rows.forEach((a, i) => {
    rows.forEach((b, j) => {
      const [ka, wa, kb, wb] = [Math.floor(a / w), a % w, Math.floor(b / w), b % w];
      let value = ka === kb ? model.errors[(ka * w + wa) * w + wb]! : 0;
      if (model.region[ka] === model.region[kb]) value += squareOf(model.discrepancyFactor, w, wa, wb);
      for (let c = 0; c < model.columns; c++)
        value += model.basis[a * model.columns + c]! * model.basis[b * model.columns + c]!;
      s.set(i, j, value);
    });
  });
  const a = Matrix.zeros(rows.length, points.length);
  rows.forEach((row, i) => {
    a.set(i, points.indexOf(Math.floor(row / w)), response[row]!);
  });
  const r = Matrix.columnVector(rows.map((row) => model.y[row]! - shift[row]!));
  const si = inverse(s);
  const asa = a.transpose().mmul(si).mmul(a);
  const p = Matrix.sub(si, si.mmul(a).mmul(inverse(asa)).mmul(a.transpose()).mmul(si));
  const quad = r.transpose().mmul(p).mmul(r).get(0, 0);
  const air = inverse(asa).mmul(a.transpose()).mmul(si).mmul(r).to1DArray();
  return { value: -0.5 * (quad + logDeterminant(s) + logDeterminant(asa)), air };
}

/** Scaled first: a determinant of many small variances leaves the range of doubles. */
function logDeterminant(m: Matrix): number {
  const scale = m.get(0, 0);
  return Math.log(determinant(Matrix.mul(m, 1 / scale))) + m.rows * Math.log(scale);
}
