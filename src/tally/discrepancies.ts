/**
 * What the points of one region of speed and load share and no model here explains, witness by witness.
 *
 * Equation    D = diag(d^2); of the exhaust with each of n banks d_fuel^2/n, and its own variance d_fuel^2/n + d_exhaust^2
 * Why         fuel and exhaust witness rest on the same fuel: two probes in it are no two facts about its amount
 */
import { cholesky } from "../numerics/index.ts";
import type { Assumptions } from "./assumptions.ts";
import type { TallyModel, TallyWitness } from "./tally-model.ts";

export function discrepancies(
  witnesses: readonly TallyWitness[],
  a: Assumptions,
): Pick<TallyModel, "discrepancy" | "discrepancyFactor"> {
  const w = witnesses.length;
  const banks = witnesses.filter((id) => id.startsWith("fuel"));
  const shared = a.discrepancyFuel ** 2 / Math.max(1, banks.length);
  const matrix = new Float64Array(w * w);
  witnesses.forEach((id, p) => {
    matrix[p * w + p] = id === "exhaust" ? shared + a.discrepancyExhaust ** 2 : sdOf(id, a) ** 2;
    if (id !== "exhaust") return;
    witnesses.forEach((other, q) => {
      if (!other.startsWith("fuel")) return;
      matrix[p * w + q] = shared;
      matrix[q * w + p] = shared;
    });
  });
  const discrepancy = Float64Array.from(witnesses, (_, p) => matrix[p * w + p]!);
  if (!cholesky(matrix, w)) throw new Error("Assertion failed: discrepancies of the witnesses");
  return { discrepancy, discrepancyFactor: lowerOf(matrix, w) };
}

function sdOf(id: TallyWitness, a: Assumptions): number {
  if (id.startsWith("meter")) return a.discrepancyMeter;
  if (id === "pressure") return a.discrepancyPressure;
  return id === "throttle" ? a.discrepancyThrottle : a.discrepancyFuel;
}

/** The factor with zeros above its diagonal. */
function lowerOf(factor: Float64Array, n: number): Float64Array {
  return factor.map((v, at) => (at % n > Math.floor(at / n) ? 0 : v));
}
