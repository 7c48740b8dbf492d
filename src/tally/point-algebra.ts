/** Eliminates the air of each point: what remains is how its witnesses differ from each other. */
import { cholesky, choleskyInverse, logDeterminant } from "../numerics/index.ts";
import type { TallyModel } from "./tally-model.ts";

export type PointAlgebra = {
  /** K*W*W: Q_k; zero rows for absent witnesses and for points with fewer than two */
  readonly precision: Float64Array;
  /** K*W: weights with which the witnesses make the common answer, u = weights' (y - shift - Phi beta) */
  readonly weights: Float64Array;
  /** K: a' R^-1 a, the precision of the common answer from this point's own readings */
  readonly airPrecision: Float64Array;
  /** K: 1 where at least two witnesses are present */
  readonly active: Uint8Array;
  /** sum over active points of ln|R_k| + ln(a' R_k^-1 a) */
  readonly logDeterminants: number;
};

export function eliminateAir(model: TallyModel, response: Float64Array | null): PointAlgebra {
  const w = model.witnesses.length;
  const k = model.points.length;
  const precision = new Float64Array(k * w * w);
  const weights = new Float64Array(k * w);
  const airPrecision = new Float64Array(k);
  const active = new Uint8Array(k);
  let logDeterminants = 0;
  for (let i = 0; i < k; i++) {
    const here: number[] = [];
    for (let j = 0; j < w; j++) if (model.present[i * w + j] === 1) here.push(j);
    const n = here.length;
    if (n === 0) continue;
    const r = new Float64Array(n * n);
    for (let p = 0; p < n; p++)
      for (let q = 0; q < n; q++) r[p * n + q] = model.errors[i * w * w + here[p]! * w + here[q]!]!;
    if (!cholesky(r, n)) throw new Error(`Assertion failed: error covariance of point ${i} is not positive definite`);
    const inverse = choleskyInverse(r, n);
    const follow = here.map((j) => (response === null ? 1 : response[i * w + j]!));
    const ra = new Float64Array(n);
    let s = 0;
    for (let p = 0; p < n; p++) {
      for (let q = 0; q < n; q++) ra[p] = ra[p]! + inverse[p * n + q]! * follow[q]!;
      s += follow[p]! * ra[p]!;
    }
    airPrecision[i] = s;
    for (let p = 0; p < n; p++) weights[i * w + here[p]!] = ra[p]! / s;
    if (n < 2) continue;
    active[i] = 1;
    logDeterminants += logDeterminant(r, n) + Math.log(s);
    for (let p = 0; p < n; p++)
      for (let q = 0; q < n; q++)
        precision[i * w * w + here[p]! * w + here[q]!] = inverse[p * n + q]! - (ra[p]! * ra[q]!) / s;
  }
  return { precision, weights, airPrecision, active, logDeterminants };
}
