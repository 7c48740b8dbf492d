import { describe, expect, it } from "vitest";
import { type MeterAmbientInput, meterAmbient } from "./ambient.ts";
import { CURVE_CSV, ENGINE } from "./test-support/examples.ts";

function ambient(more: Partial<MeterAmbientInput> = {}) {
  return meterAmbient({ file: null, options: {}, toolVersion: "0", ...more });
}

function sheet(more: Partial<MeterAmbientInput>) {
  const result = ambient(more);
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

const refusal = (more: Partial<MeterAmbientInput>) => {
  const result = ambient(more);
  return result.ok ? { reason: "none", message: "" } : result;
};

describe("meterAmbient", () => {
  it("tells a vane's altitude error by what is corrected: root of density, root of pressure, nothing", () => {
    const { altitude, compensations, headline } = sheet({ kind: "vane", options: { altitudes: "0 m, 2000 m" } });
    expect(compensations).toEqual(["none", "temperature", "temperature-and-pressure"]);
    const [none, temperature, both] = altitude[1]!.readings.map((r) => r.readingOverTruth!);
    // US Standard Atmosphere 1976, table I: 79 501 Pa at 2000 m geometric; geopotential height here, hence two digits less
    expect(temperature).toBeCloseTo(Math.sqrt(101_325 / 79_501), 3);
    expect(none).toBeCloseTo(temperature! * Math.sqrt((293.15 - 13) / 293.15), 3);
    expect(both).toBeCloseTo(1, 6);
    expect(altitude[0]!.readings.every((r) => Math.abs(r.readingOverTruth! - 1) < 1e-6)).toBe(true);
    expect(headline).toBe(
      "At 2000 m the reading is 13 % high where the engine computer corrects air temperature alone: rich.",
    );
  });

  it("tells twice a vane's error, in logarithms, for a vortex meter", () => {
    const at = (kind: "vane" | "vortex") =>
      sheet({ kind, options: { compensation: "none" } }).heat.map((row) =>
        Math.log(row.readings[0]!.readingOverTruth!),
      );
    const [vane, vortex] = [at("vane"), at("vortex")];
    expect(vane[0]).toBeLessThan(0);
    for (const [i, log] of vane.entries()) expect(vortex[i]).toBeCloseTo(2 * log, 4);
  });

  it("says that mass is sensed by wire and film, and what it does not tell of them", () => {
    for (const kind of ["hot-wire", "hot-film"] as const) {
      const { altitude, heat, tilt, headline, warnings } = sheet({ kind });
      for (const row of [...altitude, ...heat])
        expect(row.readings).toEqual([{ compensation: "none", readingOverTruth: 1, lambdaRatio: 1 }]);
      expect(tilt).toEqual([]);
      expect(headline).toMatch(/it senses mass/);
      expect(warnings.map((w) => w.code)).toContain("residual-not-told");
    }
  });

  it("tells the residual of a film and of a wire where they are described", () => {
    const film = sheet({ kind: "hot-film", options: { filmCoefficient: "0.05 %", temperatures: "20 degC, 60 degC" } });
    expect(film.heat[1]!.readings[0]!.readingOverTruth).toBeCloseTo(1.02, 9);
    const wire = { wireDiameter: "0.07 mm", wireLength: "20 mm", overheat: "120 K" };
    const hot = sheet({ file: { name: "e.json", text: ENGINE }, options: wire });
    expect(hot.heat.at(-1)!.readings[0]!.readingOverTruth!).toBeGreaterThan(1.01);
    expect(hot.headline).toMatch(/because the air is colder there/);
  });

  it("counts vapour as air: moist air runs rich by its share of water", () => {
    const rows = sheet({ kind: "hot-wire" }).humidity;
    expect(rows.map((row) => row.relativeHumidity)).toEqual([0, 0.5, 1]);
    // saturated air at 20 degC and 101.325 kPa holds 0.0147 kg/kg (from memory of the psychrometric tables)
    expect(rows[2]!.readings[0]!.lambdaRatio!).toBeCloseTo(1 / 1.0147, 3);
    expect(rows[0]!.readings[0]!.lambdaRatio).toBe(1);
  });

  it("tells tilt by torque, and by angle where the flap's torque is known", () => {
    const byTorque = sheet({ kind: "vane" }).tilt;
    expect(byTorque.map((row) => [row.torqueError, row.tilt_deg])).toEqual([
      [-0.1, null],
      [-0.05, null],
      [0.05, null],
      [0.1, null],
    ]);
    const byAngle = sheet({ kind: "vane", options: { flapTorque: "10 %", tilts: "30 deg, -30 deg" } }).tilt;
    expect(byAngle.map((row) => row.tilt_deg)).toEqual([-30, 30]);
    expect(byAngle[1]!.torqueError).toBeCloseTo(0.05, 9);
    expect(byAngle[1]!.readings).toEqual(byTorque[2]!.readings);
    // the weight matters most where the flap is nearly closed
    const errors = byTorque[2]!.readings.map((r) => 1 - r.readingOverTruth!);
    expect(errors[0]!).toBeGreaterThan(errors[1]!);
    expect(errors[1]!).toBeGreaterThan(errors[2]!);
  });

  it("has no reading where the tilt alone holds the flap open", () => {
    const { tilt } = sheet({ kind: "vane", options: { flapTorque: "100 %", tilts: "-40 deg", preload: "10 %" } });
    expect(tilt[0]!.readings[0]).toEqual({ opening: 0.1, readingOverTruth: null, lambdaRatio: null });
  });

  it("takes the curve's air from a file, and the kind from the call for a curve file", () => {
    const fromCsv = sheet({ file: { name: "c.csv", text: CURVE_CSV.replace("101325", "90000") }, kind: "vane" });
    expect(fromCsv.curveAir).toEqual({ pressure_kPa: 90, temperature_degC: 20, assumed: false });
    expect(sheet({ kind: "vane" }).curveAir.assumed).toBe(true);
    const bare = JSON.parse(ENGINE);
    bare.meters = [{ id: "meter", kind: "vane" }];
    expect(sheet({ file: { name: "e.json", text: JSON.stringify(bare) } }).meterKind).toBe("vane");
  });

  it("refuses what does not belong together", () => {
    for (const [result, word] of [
      [refusal({}), /Neither a file nor a kind/],
      [refusal({ file: { name: "c.csv", text: CURVE_CSV } }), /does not say what kind/],
      [refusal({ kind: "vane", options: { overheat: "100 K" } }), /belongs to a hot-wire/],
      [refusal({ kind: "vortex", options: { flapTorque: "5 %" } }), /belongs to a vane/],
      [refusal({ kind: "vane", options: { tilts: "5 deg" } }), /without the flap's weight/],
      [refusal({ kind: "hot-wire", options: { compensation: "pressure" } }), /no density to correct/],
      [refusal({ kind: "hot-wire", options: { overheat: "100 K" } }), /wire diameter, wire length, bore and flow/],
      [refusal({ kind: "vane", options: { altitudes: "9000 m" } }), /out of range/],
      [refusal({ kind: "vane", options: { temperatures: "20" } }), /no unit/],
      [refusal({ kind: "vane", options: { altitudes: Array(51).fill("1 m").join(",") } }), /too many/],
    ] as const) {
      expect(result.reason).toBe("option-invalid");
      expect(result.message).toMatch(word);
    }
  });

  it("refuses a wire at a flow where its law is not to be trusted", () => {
    const wire = { wireDiameter: "0.07 mm", wireLength: "20 mm", overheat: "120 K", bore: "70 mm", flow: "0.01 g/s" };
    expect(refusal({ kind: "hot-wire", options: wire }).message).toMatch(/Reynolds number/);
  });
});
