/**
 * Linear data reconciliation of published flow networks: the projection that the tally makes with every point's air, here with
 * all balances of a network at once, by the same Cholesky algebra and tested against the same chi-square.
 */
import { describe, it } from "vitest";
import { chiSquareQuantile, cholesky, choleskySolve } from "../src/numerics/index.ts";
import { type CheckRecord, recordsNamed } from "./check-records.ts";
import { expectDigits, expectFailure, expectInside } from "./matched-digits.ts";

type Network = { readonly measured: readonly number[]; readonly variance: readonly number[]; readonly A: number[][] };
type Reconciled = { reconciled: number[]; global_test: number; df: number; chi2_95: number; reconciled_sd: number[] };

/** x = y - V A' (A V A')^-1 A y and gamma = (A y)' (A V A')^-1 (A y) */
function reconcile({ measured, variance, A }: Network): { readonly flows: number[]; readonly globalTest: number } {
  const n = A.length;
  const scatter = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) scatter[i * n + j] = variance.reduce((sum, v, k) => sum + A[i]![k]! * v * A[j]![k]!, 0);
  if (!cholesky(scatter, n)) throw new Error("The balances are not independent.");
  const imbalance = A.map((row) => row.reduce((sum, a, k) => sum + a * measured[k]!, 0));
  const solved = Float64Array.from(imbalance);
  choleskySolve(scatter, n, solved);
  const flows = measured.map((y, k) => y - variance[k]! * A.reduce((sum, row, i) => sum + row[k]! * solved[i]!, 0));
  return { flows, globalTest: imbalance.reduce((sum, b, i) => sum + b * solved[i]!, 0) };
}

function check(row: CheckRecord, varianceScale = 1): void {
  const network = row.inputs as unknown as Network;
  const wanted = row.expected as Reconciled;
  const variance = network.variance.map((v, k) => (k === 0 ? v * varianceScale : v));
  const { flows, globalTest } = reconcile({ ...network, variance });
  for (const [k, flow] of flows.entries())
    expectInside(flow, [wanted.reconciled[k]! - 1e-8, wanted.reconciled[k]! + 1e-8], `${row.id} stream ${k + 1}`);
  expectDigits(globalTest, wanted.global_test, 8, `${row.id} global test`);
  expectDigits(chiSquareQuantile(0.95, wanted.df), wanted.chi2_95, 9, row.id);
}

describe("published networks", () => {
  for (const row of recordsNamed("10-statistics-and-reconciliation", "dr.")) {
    it(`${row.id}: ${row.quantity}`, () => check(row));
    it(`${row.id} fails once one variance moves by a thousandth`, () => expectFailure(() => check(row, 1.001)));
  }
});
