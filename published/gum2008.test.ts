/** Uncertainty budgets against the examples of the GUM (JCGM 100:2008) and of NIST Technical Note 1900. */
import { describe, it } from "vitest";
import { propagateUncertainty, rectangularUncertainty } from "../src/numerics/index.ts";
import { type CheckRecord, expected, input, record } from "./check-records.ts";
import { expectDigits, expectFailure, expectInside, expectRecord } from "./matched-digits.ts";

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
    for (const scale of [0.9, 1.1]) expectFailure(() => checkH2(scale), `correlations times ${scale}:`);
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
  /** a sum of independent inputs of mean zero */
  const sumOf = (uncertainties: readonly number[]) =>
    propagateUncertainty(
      (values) => values.reduce((a, b) => a + b, 0),
      uncertainties.map((standardUncertainty, i) => ({ name: `x${i}`, value: 0, standardUncertainty })),
    );

  it("gives uncertainty and interval of sums, 9.2; of rectangular inputs the interval is wide, as the example shows", () => {
    const four = [1, 1, 1, 1];
    const normal = record(TOPIC, "jcgm101.9.2.2");
    expectRecord(sumOf(four).standardUncertainty, normal, { part: "u" });
    const [, high = Number.NaN] = (normal.expected as { interval: number[] }).interval;
    expectInside(sumOf(four).expandedUncertainty, [high - 0.01, high + 0.01], normal.id);
    const rectangular = record(TOPIC, "jcgm101.9.2.3");
    const width = rectangularUncertainty(input(rectangular, "b"));
    expectRecord(sumOf(four.map(() => width)).standardUncertainty, rectangular, { part: "u" });
    const dominated = record(TOPIC, "jcgm101.9.2.4");
    const budget = sumOf([1, 1, 1, 10]);
    expectRecord(budget.standardUncertainty, dominated, { part: "u" });
    const { guf, mcm } = dominated.expected as { guf: number[]; mcm: number[] };
    expectInside(budget.expandedUncertainty, [guf[1]! - 0.05, guf[1]! + 0.05], dominated.id);
    expectFailure(() => expectInside(budget.expandedUncertainty, [mcm[1]! - 0.05, mcm[1]! + 0.05]));
  });

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

describe("npl, ln x over a range from 0.1 to 1.1", () => {
  it("gives the linear budget's value; its uncertainty is taken over the whole of u and is the wider for the bend", () => {
    const row = record(TOPIC, "npl.log");
    const inputs = [{ name: "x", value: 0.6, standardUncertainty: rectangularUncertainty(0.5) }];
    const budget = propagateUncertainty(([x = 1]) => Math.log(x), inputs);
    expectRecord(budget.value, row, { part: "guf_y" });
    // derivative 0.481, truth 0.606: the difference over +-u lies between and is the better of the two
    expectInside(budget.standardUncertainty, [expected(row, "guf_u"), expected(row, "u")], row.id);
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
