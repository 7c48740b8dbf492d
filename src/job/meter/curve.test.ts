import { describe, expect, it } from "vitest";
import { parseEngineFile } from "../engine-file/parse-engine-file.ts";
import { type MeterCurveInput, meterCurve } from "./curve.ts";
import { CURVE_CSV, ENGINE, kingSignal } from "./test-support/examples.ts";

function curve(text: string, more: Partial<MeterCurveInput> = {}) {
  return meterCurve({ file: { name: "f", text }, air: {}, rows: 21, toolVersion: "0", ...more });
}

function sheet(text: string, more: Partial<MeterCurveInput> = {}) {
  const result = curve(text, more);
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

const KING = JSON.stringify({
  format: "airtally-curve/1",
  signalUnit: "V",
  flow: "mass",
  at: { pressure_Pa: 100_000, temperature_K: 295 },
  form: { kind: "king", still: 0.6, slope: 10, exponent: 0.5 },
  domain: [kingSignal(1), kingSignal(160)],
  band: null,
});

describe("meterCurve", () => {
  it("prints its points as they stand, in its own air, whatever the kind", () => {
    const { points, air, headline, meter, facts } = sheet(CURVE_CSV);
    expect(points.map((p) => p.massFlow_g_per_s)).toEqual([2, 20, 70, 180]);
    expect(points[1]!.high90_g_per_s! - 20).toBeCloseTo(0.16449, 4);
    expect(air).toMatchObject({ pressure_kPa: 101.325, pressureFrom: "curve" });
    expect(headline).toBe("From 2 g/s at 1 V to 180 g/s at 4 V: 4 points.");
    expect(meter.kind).toBeNull();
    expect(facts).toBeNull();
  });

  it("prints the rows asked for, over the whole curve, with slopes that differences show", () => {
    const { rows } = sheet(CURVE_CSV, { rows: 31 });
    expect(rows).toHaveLength(31);
    expect([rows[0]!.signal, rows[30]!.signal]).toEqual([1, 4]);
    for (let i = 1; i < 30; i++) {
      const [before, here, after] = [rows[i - 1]!, rows[i]!, rows[i + 1]!];
      const secant = (after.massFlow_g_per_s - before.massFlow_g_per_s) / (after.signal - before.signal);
      expect(Math.abs(here.slope_g_per_s / secant - 1)).toBeLessThan(0.12);
      expect(here.sensitivity!).toBeCloseTo((here.slope_g_per_s * here.signal) / here.massFlow_g_per_s, 3);
    }
  });

  it("names a law and its numbers, and follows it", () => {
    const { meter, parameters, rows, points } = sheet(KING, { rows: 5 });
    expect(meter.law).toBe("King's law");
    expect(parameters).toEqual([
      { name: "still", value: 0.6 },
      { name: "slope", value: 10 },
      { name: "exponent", value: 0.5 },
    ]);
    expect(points).toEqual([]);
    for (const row of rows) expect(kingSignal(row.massFlow_g_per_s)).toBeCloseTo(row.signal, 4);
  });

  it("hands a curve to the engine file that reads back within a thousandth of the largest flow", () => {
    const { engineFileCurve } = sheet(KING);
    const engine = JSON.parse(ENGINE);
    engine.meters = [{ id: "meter", kind: "hot-wire", curve: engineFileCurve }];
    const text = JSON.stringify(engine);
    expect(parseEngineFile(text).ok).toBe(true);
    const [law, points] = [sheet(KING, { rows: 41 }), sheet(text, { rows: 41 })];
    expect(points.meter.air).toMatchObject({ pressure_kPa: 100, temperature_degC: 21.85 });
    for (const [i, row] of law.rows.entries())
      expect(Math.abs(points.rows[i]!.massFlow_g_per_s - row.massFlow_g_per_s)).toBeLessThan(0.16);
  });

  it("prints a vane's curve in other air by the root of density, and asks for the kind before", () => {
    const thin = sheet(CURVE_CSV, { kind: "vane", air: { pressure: "81.06 kPa" } });
    expect(thin.points[3]!.massFlow_g_per_s / 180).toBeCloseTo(Math.sqrt(0.8), 5);
    expect(thin.facts?.senses).toMatch(/drag/);
    const refused = curve(CURVE_CSV, { air: { pressure: "81.06 kPa" } });
    expect(refused).toMatchObject({ ok: false, reason: "option-invalid" });
  });

  it("says what a kind senses without the names of source files", () => {
    for (const kind of ["vane", "vortex", "hot-wire", "hot-film"] as const)
      expect(JSON.stringify(sheet(CURVE_CSV, { kind }).facts)).not.toMatch(/\.ts/);
  });

  it("refuses counts of rows that cannot be", () => {
    for (const rows of [1, 2.5, 1002, Number.NaN])
      expect(curve(CURVE_CSV, { rows })).toMatchObject({ ok: false, reason: "option-invalid" });
  });
});
