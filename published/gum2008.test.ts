/** Uncertainty budgets against the examples of the GUM (JCGM 100:2008) and of NIST Technical Note 1900. */
import { describe, it } from "vitest";
import { propagateUncertainty, rectangularUncertainty } from "../src/numerics/index.ts";
import { type CheckRecord, expected, input, record } from "./check-records.ts";
import { expectDigits, expectRecord } from "./matched-digits.ts";

const TOPIC = "10-statistics-and-reconciliation";

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
const covarianceOfMeans = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + (value - mean(a)) * ((b[i] ?? Number.NaN) - mean(b)), 0) /
  (a.length * (a.length - 1));

/** Impedance of an element from repeated simultaneous readings of V, J and phi, which are correlated. */
function impedance(row: CheckRecord, correlationScale = 1) {
  const readings = [row.inputs.V, row.inputs.J_mA, row.inputs.phi_rad] as number[][];
  const inputs = readings.map((values, i) => ({
    name: ["V", "J", "phi"][i] ?? "",
    value: mean(values),
    standardUncertainty: Math.sqrt(covarianceOfMeans(values, values)),
    degreesOfFreedom: values.length - 1,
  }));
  const correlation = (i: number, j: number): number =>
    (correlationScale * covarianceOfMeans(readings[i] ?? [], readings[j] ?? [])) /
    ((inputs[i]?.standardUncertainty ?? 1) * (inputs[j]?.standardUncertainty ?? 1));
  const of = (f: (v: number, j: number, phi: number) => number) =>
    propagateUncertainty(([v = 0, j = 0, phi = 0]) => f(v, j / 1000, phi), inputs, correlation);
  return {
    R: of((v, j, phi) => (v / j) * Math.cos(phi)),
    X: of((v, j, phi) => (v / j) * Math.sin(phi)),
    Z: of((v, j) => v / j),
  };
}

function checkH2(correlationScale: number): void {
  const row = record(TOPIC, "gum.H2");
  const { R, X, Z } = impedance(row, correlationScale);
  for (const [name, budget] of Object.entries({ R, X, Z })) {
    expectRecord(budget.value, row, { part: name });
    // printed to three places: 0.071, 0.295, 0.236
    const printed = expected(row, `u${name}`);
    expectDigits(budget.standardUncertainty, printed, -Math.log10(0.0006 / printed), `u(${name})`);
  }
}

describe("gum2008", () => {
  it("gives resistance, reactance and impedance with their uncertainties, H.2", () => checkH2(1));

  it("fails once the correlations are moved by a tenth", () => {
    for (const scale of [0.9, 1.1]) {
      let failed = false;
      try {
        checkH2(scale);
      } catch {
        failed = true;
      }
      expectDigits(failed ? 1 : 0, 1, 15, `correlations times ${scale}`);
    }
  });

  it("gives effective degrees of freedom, G.4", () => {
    const row = record(TOPIC, "gum.dof");
    const [u1 = 0, u2 = 0] = row.inputs.u as number[];
    const budget = propagateUncertainty(
      ([a = 0, b = 0]) => a + b,
      [
        { name: "a", value: 0, standardUncertainty: u1, degreesOfFreedom: 9 },
        { name: "b", value: 0, standardUncertainty: u2 },
      ],
    );
    expectRecord(budget.effectiveDegreesOfFreedom, row);
  });

  it("gives the combined uncertainty of the end gauge, H.1", () => {
    const row = record(TOPIC, "gum.H1");
    const line = (name: string, value: number, degreesOfFreedom?: number) =>
      degreesOfFreedom === undefined
        ? { name, value: 0, standardUncertainty: value }
        : { name, value: 0, standardUncertainty: value, degreesOfFreedom };
    // The five contributions of table H.1 in nm
    const budget = propagateUncertainty(
      (values) => values.reduce((a, b) => a + b, 0),
      [
        line("standard", 25, 18),
        line("difference", 9.7, 25.6),
        line("expansion of the standard", 0),
        line("temperature", 0),
        line("difference of expansion", 2.9, 50),
        line("difference of temperature", 16.6, 2),
      ],
    );
    const { uc_nm: combined, nu_eff: degrees } = row.expected as { uc_nm: number; nu_eff: number };
    // printed 32 nm (rounded up from 31.7) and 16 (truncated from 16.7)
    expectDigits(Math.ceil(budget.standardUncertainty), combined, 15);
    expectDigits(Math.floor(budget.effectiveDegreesOfFreedom), degrees, 15);
  });

  it("gives a rectangular distribution's standard uncertainty, 4.3.7", () => {
    expectDigits(rectangularUncertainty(1.7320508075688772), 1, 15);
  });
});

describe("jcgm101", () => {
  it("gives the first-order uncertainty of the mass calibration, 9.3, which is known to be too small", () => {
    const row = record(TOPIC, "jcgm101.9.3");
    const budget = propagateUncertainty(
      ([m = 0, dm = 0, air = 0, weight = 1, reference = 1]) =>
        (m + dm) * (1 + (air - 1.2) * (1 / weight - 1 / reference)) - 100_000,
      [
        { name: "reference mass", value: 100_000, standardUncertainty: 0.05 },
        { name: "added mass", value: 1.234, standardUncertainty: 0.02 },
        { name: "air", value: 1.2, standardUncertainty: rectangularUncertainty(0.1) },
        { name: "weight", value: 8000, standardUncertainty: rectangularUncertainty(1000) },
        { name: "reference", value: 8000, standardUncertainty: rectangularUncertainty(50) },
      ],
    );
    expectRecord(budget.value, row, { part: "y" });
    expectRecord(budget.standardUncertainty, row, { part: "u_guf1" });
  });
});

describe("tn1900", () => {
  it("gives the thermal expansion coefficient, E13", () => {
    const row = record(TOPIC, "tn1900.E13");
    const names = ["L0", "L1", "T0", "T1"];
    const uncertainties = row.inputs.u as number[];
    const budget = propagateUncertainty(
      ([l0 = 1, l1 = 1, t0 = 0, t1 = 1]) => (l1 - l0) / (l0 * (t1 - t0)),
      names.map((name, i) => ({
        name,
        value: input(row, name),
        standardUncertainty: uncertainties[i] ?? Number.NaN,
      })),
    );
    expectRecord(budget.value, row, { part: "alpha" });
    expectRecord(budget.standardUncertainty, row, { part: "u" });
  });
});
