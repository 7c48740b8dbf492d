/**
 * What references of healthy engines of the same kind say of this engine's unknowns, as independent linear observations.
 *
 * Equation    theta_ref = rho g + sqrt(1 - rho^2) h for each unknown, g = G beta this engine's, h of the reference alone;
 *             two references share rho (1 - rho) of it besides;  rho = 1 - (spread/sd)^2
 *             what a reference's recording said: F' L^-1 theta_ref = reading + N(0, 1),
 *             L L' = before, F F' = (L^-1 after L'^-1)^-1 - 1, F reading = (L^-1 after L'^-1)^-1 L^-1 mean
 *             all rows together have the covariance C = K K'; K^-1 of them are independent with unit variance
 * Symbols     spread sd of one engine about its kind | sd that among all engines, by the assumptions
 * Limits      spread = 0: as if the reference's recording were this engine's own; spread >= sd: nothing is said
 * Source      [rasmussen2006] 2.2 (conditioning a Gaussian)
 */
import { cholesky, choleskyInverse, choleskySolve, solveLower, solveUpper } from "../../numerics/index.ts";
import type { StandingObservation, TallyModel } from "../tally-model.ts";
import { believedSd, functionRows } from "./function-rows.ts";
import { expectedOf, type HealthyReference, NUGGET, restricted } from "./healthy-reference.ts";
import { holdsQuantity } from "./reference-quantities.ts";

/** sd of one engine about its kind by unknown, in the unit of its assumption; an unknown that is not named has nothing in common */
export type Spreads = "the-same-engine" | ReadonlyMap<string, number>;

/** share of what was believed that is added where the recording said nothing, so that its rows can be laid out */
const RIDGE = 1e-3;

export function withReferences(
  model: TallyModel,
  references: readonly HealthyReference[],
  spreads: Spreads,
): TallyModel {
  const shares = new Map(model.unknowns.map(({ name }) => [name, shareOf(model, name, spreads)]));
  const said = references
    .map((reference) => restricted(reference, (q) => holdsQuantity(model, q)))
    .filter((reference) => reference.values.length > 0)
    .map((reference) => rowsOf(model, reference));
  const rows = said.flatMap((s, from) => [...s.readings].map((reading, i) => ({ s, from, i, reading })));
  const n = rows.length;
  if (n === 0) return model;
  const covariance = new Float64Array(n * n);
  for (let p = 0; p < n; p++) {
    for (let q = 0; q <= p; q++) {
      const [a, b] = [rows[p]!, rows[q]!];
      const same = a.from === b.from;
      let sum = same ? a.s.noise[a.i * a.s.n + b.i]! : 0;
      for (const { name, from, columns } of model.unknowns) {
        const rho = shares.get(name)!;
        const apart = same ? 1 - rho * rho : rho * (1 - rho);
        if (apart === 0) continue;
        for (let c = from; c < from + columns; c++)
          sum += apart * a.s.rows[a.i * model.columns + c]! * b.s.rows[b.i * model.columns + c]!;
      }
      covariance[p * n + q] = sum;
    }
  }
  if (!cholesky(covariance, n)) throw new Error("Assertion failed: covariance of the references' rows");
  return { ...model, standing: [...model.standing, ...independent(model, rows, covariance, shares)] };
}

/** How much of an unknown engines of one kind have in common: the correlation between two of them. */
function shareOf(model: TallyModel, unknown: string, spreads: Spreads): number {
  if (spreads === "the-same-engine") return 1;
  const own = spreads.get(unknown);
  return own === undefined ? 0 : Math.max(0, 1 - (own / believedSd(model, unknown)) ** 2);
}

type Said = {
  readonly n: number;
  readonly readings: Float64Array;
  /** n*B: the rows as this engine's unknowns would give them if the two engines were one */
  readonly rows: Float64Array;
  /** n*n */
  readonly noise: Float64Array;
};

/** Whether a reference's covariances are such: positive definite, and nowhere wider after looking than before. */
export function isSound(reference: HealthyReference): boolean {
  return factorsOf(reference) !== null;
}

type Factors = { readonly l: Float64Array; readonly after: Float64Array; readonly gained: Float64Array };

/** L, the factor of the whitened covariance after looking, and F; null where they do not exist. */
function factorsOf({ values, covariance, before }: HealthyReference): Factors | null {
  const n = values.length;
  const l = before.slice();
  if (!cholesky(l, n)) return null;
  const after = whitened(l, covariance, n);
  if (!cholesky(after, n)) return null;
  const gained = choleskyInverse(after, n);
  for (let i = 0; i < n; i++) gained[i * n + i] = gained[i * n + i]! - 1 + RIDGE;
  return cholesky(gained, n) ? { l, after, gained } : null;
}

/** What the recording of one reference said, as rows about functions of this job's unknowns. */
function rowsOf(model: TallyModel, reference: HealthyReference): Said {
  const { values } = reference;
  const n = values.length;
  const factors = factorsOf(reference);
  if (factors === null) throw new Error("Assertion failed: covariances of a reference");
  const { l, after, gained } = factors;
  const readings = Float64Array.from(values, (v) => v.mean);
  solveLower(l, n, readings);
  choleskySolve(after, n, readings);
  solveLower(gained, n, readings);
  const told = functionRows(model, values);
  const moved = values.map((v) => (v.expected ?? 0) - (expectedOf(model, v) ?? 0));
  const rows = new Float64Array(n * model.columns);
  const weights = weightRows(l, gained, n);
  const noise = new Float64Array(n * n);
  for (let r = 0; r < n; r++) {
    for (let i = 0; i < n; i++) {
      const weight = weights[r * n + i]!;
      readings[r] = readings[r]! + weight * moved[i]!;
      for (let c = 0; c < model.columns; c++)
        rows[r * model.columns + c] = rows[r * model.columns + c]! + weight * told[i]!.row[c]!;
      for (let q = 0; q < n; q++)
        noise[r * n + q] = noise[r * n + q]! + weight * weights[q * n + i]! * (told[i]!.left + NUGGET);
    }
    noise[r * n + r] = noise[r * n + r]! + 1;
  }
  return { n, readings, rows, noise };
}

/** L^-1 A L'^-1 */
function whitened(l: Float64Array, matrix: Float64Array, n: number): Float64Array {
  const out = matrix.slice();
  for (let pass = 0; pass < 2; pass++) {
    for (let i = 0; i < n; i++) solveLower(l, n, out.subarray(i * n, (i + 1) * n));
    transpose(out, n);
  }
  return out;
}

function transpose(matrix: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const kept = matrix[i * n + j]!;
      matrix[i * n + j] = matrix[j * n + i]!;
      matrix[j * n + i] = kept;
    }
  }
}

/** F' L^-1, row by row */
function weightRows(l: Float64Array, f: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let r = 0; r < n; r++) {
    const row = out.subarray(r * n, (r + 1) * n);
    for (let i = r; i < n; i++) row[i] = f[i * n + r]!;
    solveUpper(l, n, row);
  }
  return out;
}

/** Rows of covariance K K' made independent, as observations of beta. */
function independent(
  model: TallyModel,
  rows: readonly { readonly s: Said; readonly i: number; readonly reading: number }[],
  factor: Float64Array,
  shares: ReadonlyMap<string, number>,
): StandingObservation[] {
  const n = rows.length;
  const bases = rows.map(() => new Float64Array(model.columns));
  const column = new Float64Array(n);
  for (const { name, from, columns } of model.unknowns) {
    const rho = shares.get(name)!;
    if (rho === 0) continue;
    for (let c = from; c < from + columns; c++) {
      rows.forEach(({ s, i }, r) => {
        column[r] = rho * s.rows[i * model.columns + c]!;
      });
      solveLower(factor, n, column);
      bases.forEach((basis, r) => {
        basis[c] = column[r]!;
      });
    }
  }
  const readings = Float64Array.from(rows, (r) => r.reading);
  solveLower(factor, n, readings);
  return bases.map((basis, r) => ({
    kind: "healthy-reference",
    unit: "1",
    meter: null,
    reading: readings[r]!,
    variance: 1,
    basis,
    where: "reference of a healthy engine of this kind",
  }));
}
