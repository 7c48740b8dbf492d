import { describe, expect, it } from "vitest";
import { fitCurve } from "../curves/fit-curve.ts";
import { type BenchRow, type BenchUncertainties, flowBenchSheet } from "./flow-bench-sheet.ts";
import type { ReferenceDevice } from "./reference-device.ts";

const UNCERTAINTIES: BenchUncertainties = {
  pressure: 50,
  temperature: 0.3,
  pressureDrop: 5,
  humidityRatio: 0.0005,
  boreRelative: 2e-4,
  leakRelative: 1e-3,
  signal: 0.002,
};
const ROW: BenchRow = { pressure: 100_000, temperature: 295.15, pressureDrop: 2000, humidityRatio: 0.008, signal: 2.5 };
const ORIFICE: ReferenceDevice = {
  kind: "differential-pressure",
  device: { kind: "orifice-plate", taps: "corner", pipeDiameter: 0.1, boreDiameter: 0.06 },
};

function sheet(device: ReferenceDevice, rows: readonly BenchRow[] = [ROW]) {
  const result = flowBenchSheet(device, rows, UNCERTAINTIES);
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

describe("flowBenchSheet", () => {
  it("finds the flow of an orifice plate, dominated by its discharge coefficient, and all shares", () => {
    const { results } = sheet(ORIFICE);
    const { budget, outside } = results[0]!;
    expect(outside).toEqual([]);
    expect(budget.value).toBeGreaterThan(0.1);
    expect(budget.lines[0]!.name).toBe("discharge coefficient");
    expect(budget.standardUncertainty / budget.value).toBeGreaterThan(0.0025);
    expect(budget.standardUncertainty / budget.value).toBeLessThan(0.005);
    expect(budget.lines.reduce((sum, line) => sum + line.share, 0)).toBeCloseTo(1, 9);
  });

  it("has sensitivities that follow the root law: half a per cent of flow for one per cent of drop", () => {
    const line = (name: string) => sheet(ORIFICE).results[0]!.budget.lines.find((l) => l.name === name)!;
    const { value } = sheet(ORIFICE).results[0]!.budget;
    // a hair less than a half: the expansibility takes some back
    const perDrop = (line("pressure drop").sensitivity * ROW.pressureDrop) / value;
    expect(perDrop).toBeLessThan(0.5);
    expect(perDrop).toBeGreaterThan(0.48);
    expect((line("temperature").sensitivity * ROW.temperature) / value).toBeCloseTo(-0.5, 1);
    // two from the area, and beta^4/(1 - beta^4) more by the approach velocity, with the coefficient's own change
    expect(line("bore").sensitivity / value).toBeGreaterThan(2);
    expect(line("bore").sensitivity / value).toBeLessThan(2.6);
  });

  it("reads nozzle, venturi, critical nozzle and master meter, each with its own uncertainty", () => {
    const nozzle: ReferenceDevice = {
      kind: "differential-pressure",
      device: { kind: "isa-1932-nozzle", pipeDiameter: 0.1, boreDiameter: 0.05 },
    };
    const venturi: ReferenceDevice = {
      kind: "venturi",
      throatDiameter: 0.05,
      inletDiameter: 0.1,
      dischargeCoefficient: 0.985,
      dischargeUncertainty: 0.004,
    };
    const critical: ReferenceDevice = { kind: "critical-nozzle", throat: "toroidal", throatDiameter: 0.01 };
    const master: ReferenceDevice = { kind: "master-meter", relativeUncertainty: 0.005 };
    const flows = [nozzle, venturi].map((device) => sheet(device).results[0]!.budget.value);
    expect(flows[1]! / flows[0]!).toBeCloseTo(1, 1);
    const choked = sheet(critical).results[0]!.budget;
    const byHand = (0.6851 * 0.98 * (Math.PI / 4) * 1e-4 * 1e5) / Math.sqrt(287.05 * 295.15);
    expect(choked.value / byHand).toBeCloseTo(1, 1);
    const measured = sheet(master, [{ ...ROW, pressureDrop: 0, masterFlow: 0.05 }]).results[0]!.budget;
    expect(measured.value).toBeCloseTo(0.05, 14);
    expect(measured.standardUncertainty / 0.05).toBeCloseTo(Math.hypot(0.005, 0.001), 6);
  });

  it("adds to a Venturi nozzle's flow the uncertainty of its standard", () => {
    const pipe = { pipeDiameter: 0.1, boreDiameter: 0.06 };
    const { budget } = sheet({ kind: "differential-pressure", device: { kind: "venturi-nozzle", ...pipe } })
      .results[0]!;
    const own = budget.lines.find((l) => l.name === "discharge coefficient")!;
    // (1.2 + 1.5 b^4) % at 95 %, from memory
    expect(own.contribution / budget.value).toBeCloseTo(0.013944 / 2, 6);
  });

  it("flows less moist air than dry at the same drop over an orifice, by the root of density", () => {
    const at = (humidityRatio: number) => sheet(ORIFICE, [{ ...ROW, humidityRatio }]).results[0]!.budget.value;
    expect(at(0.02) / at(0)).toBeCloseTo(Math.sqrt(1.02 / 1.03216), 3);
  });

  it("names broken limits of the standard without withholding the value", () => {
    const small: ReferenceDevice = {
      kind: "differential-pressure",
      device: { kind: "orifice-plate", taps: "corner", pipeDiameter: 0.03, boreDiameter: 0.01 },
    };
    const { outside, budget } = sheet(small).results[0]!;
    expect(outside.length).toBeGreaterThan(0);
    expect(budget.value).toBeGreaterThan(0);
  });

  it("refuses a row that cannot be, and says which", () => {
    const refuse = (row: Partial<BenchRow>, device: ReferenceDevice = ORIFICE) => {
      const result = flowBenchSheet(device, [ROW, { ...ROW, ...row }], UNCERTAINTIES);
      return result.ok ? "" : result.message;
    };
    expect(refuse({ pressureDrop: -1 })).toContain("Row 2");
    expect(refuse({ pressureDrop: 2e5 })).toContain("pressure drop");
    expect(refuse({ temperature: Number.NaN })).toContain("no number");
    expect(refuse({ temperature: 20 })).toContain("temperature");
    expect(refuse({ humidityRatio: 2 })).toContain("humidity");
    expect(refuse({}, { kind: "master-meter", relativeUncertainty: 0.01 })).toContain("master");
  });

  it("makes points that a curve is fitted to, end to end", () => {
    const rows = Array.from({ length: 12 }, (_, i) => {
      const pressureDrop = 50 * (1 + i) ** 2;
      return { ...ROW, pressureDrop, signal: 1 };
    });
    // an invented wire: s^2 = 0.8 + 9 m^0.5
    const bench = sheet(ORIFICE, rows).results.map(({ row, budget }) => ({
      ...row,
      signal: Math.sqrt(0.8 + 9 * Math.sqrt(budget.value)),
    }));
    const fit = fitCurve(sheet(ORIFICE, bench).points, { signalUnit: "V", flow: "mass", at: null });
    if (!fit.ok) throw new Error(fit.message);
    expect(fit.value.chosen.name).toBe("King's law");
    expect(fit.value.chosen.form).toMatchObject({ kind: "king" });
    const { still, slope, exponent } = fit.value.chosen.form as { still: number; slope: number; exponent: number };
    expect(still).toBeCloseTo(0.8, 1);
    expect(slope).toBeCloseTo(9, 1);
    expect(exponent).toBeCloseTo(0.5, 2);
  });
});
