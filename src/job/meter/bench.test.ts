import { describe, expect, it } from "vitest";
import { meterBench } from "./bench.ts";
import { meterFit } from "./fit.ts";
import { benchSheet, rowsWith } from "./test-support/examples.ts";

const bench = (sheet: object) =>
  meterBench({ file: { name: "sheet.json", text: JSON.stringify(sheet) }, toolVersion: "0" });

function done(sheet: object) {
  const result = bench(sheet);
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

const refusal = (sheet: object) => {
  const result = bench(sheet);
  return result.ok ? { reason: "none", message: "", remedy: "" } : result;
};

const noDrop = { pressureDrop: undefined };

describe("meterBench", () => {
  it("works out the flow of an orifice plate by its law, within two per cent of a sum by hand", () => {
    const { sheet } = done(benchSheet());
    const row = sheet.rows[3]!; // 2000 Pa
    // 0.6065 discharge, beta 0.6, density of 1.178 kg/m3 by hand at 45 %, 22 degC, 100.2 kPa; expansibility 0.995
    const byHand = (0.6065 / Math.sqrt(1 - 0.6 ** 4)) * 0.995 * (Math.PI / 4) * 0.06 ** 2 * Math.sqrt(2 * 2000 * 1.178);
    expect(row.flow_g_per_s / 1000 / byHand).toBeCloseTo(1, 1);
    expect(Math.abs(row.flow_g_per_s / 1000 / byHand - 1)).toBeLessThan(0.02);
    expect(row.expanded95_g_per_s / row.sd_g_per_s).toBeCloseTo(1.96, 2);
    expect(row.budget.reduce((sum, line) => sum + line.share, 0)).toBeCloseTo(1, 4);
    expect(Math.hypot(...row.budget.map((line) => line.sd_g_per_s))).toBeCloseTo(row.sd_g_per_s, 4);
    expect(sheet.reference).toBe("orifice plate, 60 mm in a 100 mm pipe, corner taps");
  });

  it("follows the root of the drop from row to row", () => {
    const flows = done(benchSheet()).sheet.rows.map((row) => row.flow_g_per_s);
    expect(flows[3]! / flows[1]!).toBeCloseTo(2, 1);
  });

  it("writes points that fit reads to the same flows", () => {
    const { sheet, pointsCsv } = done(benchSheet());
    const fit = meterFit({ file: { name: "p.csv", text: pointsCsv }, toolVersion: "0" });
    if (!fit.ok) throw new Error(fit.message);
    for (const [i, row] of sheet.rows.entries())
      expect(fit.value.sheet.points[i]!.flow).toBeCloseTo(row.flow_g_per_s, 3);
    expect(fit.value.sheet.air?.pressure_kPa).toBe(99.8);
  });

  it.each([
    ["isa-1932-nozzle", { pipeDiameter: "100 mm", boreDiameter: "50 mm" }, {}],
    ["long-radius-nozzle", { pipeDiameter: "100 mm", boreDiameter: "50 mm" }, {}],
    ["venturi-nozzle", { pipeDiameter: "100 mm", boreDiameter: "50 mm" }, {}],
    [
      "venturi",
      { throatDiameter: "50 mm", inletDiameter: "100 mm", dischargeCoefficient: 0.985, dischargeUncertainty: "0.4 %" },
      {},
    ],
    ["critical-nozzle", { throat: "toroidal", throatDiameter: "10 mm" }, noDrop],
    ["master-meter", { uncertainty: "0.5 %" }, { ...noDrop, masterFlow: "50 g/s" }],
  ] as const)("reads a %s", (kind, more, row) => {
    const { sheet } = done(benchSheet({ reference: { kind, ...more }, rows: rowsWith(row) }));
    for (const { flow_g_per_s: flow, sd_g_per_s: sd } of sheet.rows) {
      expect(flow).toBeGreaterThan(5);
      expect(sd / flow).toBeGreaterThan(0.001);
      expect(sd / flow).toBeLessThan(0.05);
    }
  });

  it("gives a master meter's flow as read, with its own uncertainty and the leak", () => {
    const reference = { kind: "master-meter", uncertainty: "0.5 %" };
    const { sheet } = done(benchSheet({ reference, rows: rowsWith({ ...noDrop, masterFlow: "50 g/s" }) }));
    expect(sheet.rows[0]!.flow_g_per_s).toBeCloseTo(50, 9);
    expect(sheet.rows[0]!.sd_g_per_s).toBeCloseTo(50 * Math.hypot(0.005, 0.001), 6);
  });

  it("counts what is not stated as nothing, and says what; takes half of saturation for humidity", () => {
    const { sheet } = done(
      benchSheet({ uncertainties: { pressureDrop: "4 Pa" }, rows: rowsWith({ humidity: undefined }) }),
    );
    const codes = Object.fromEntries(sheet.warnings.map((w) => [w.code, w.text]));
    expect(codes["counted-as-nothing"]).toMatch(/pressure, temperature, bore, leak and signal/);
    expect(codes["humidity-assumed"]).toMatch(/half of saturation/);
    const damp = sheet.rows[0]!.humidityRatio;
    expect(damp).toBeGreaterThan(0.006);
    expect(damp).toBeLessThan(0.01);
    expect(sheet.rows[0]!.budget.some((line) => line.name === "humidity")).toBe(true);
  });

  it("names rows outside the reference's standard without withholding them", () => {
    const reference = { kind: "orifice-plate", pipeDiameter: "30 mm", boreDiameter: "10 mm" };
    const { sheet } = done(benchSheet({ reference }));
    expect(sheet.rows[0]!.outside.length).toBeGreaterThan(0);
    expect(sheet.warnings.map((w) => w.code)).toContain("outside-standard");
  });

  it("refuses a sheet that is not right, told against the keys of its own reference", () => {
    const nozzle = { kind: "isa-1932-nozzle", pipeDiameter: "100 mm", boreDiamter: "50 mm" };
    const misspelt = refusal(benchSheet({ reference: nozzle }));
    expect(misspelt.message).toMatch(/boreDiamter/);
    expect(misspelt.remedy).toMatch(/"boreDiameter"/);
    expect(misspelt.remedy).not.toMatch(/taps/);
    const lacking = refusal(benchSheet({ rows: undefined }));
    expect(lacking.message).toMatch(/lacks "rows"/);
    expect(lacking.remedy).toMatch(/docs\/meter\.md/);
  });

  it("says of another format that it is one, not which of its keys are strange", () => {
    const text = JSON.stringify({ format: "airtally-bench-points/1", points: [] });
    const result = meterBench({ file: { name: "f", text }, toolVersion: "0" });
    expect(result).toMatchObject({ ok: false, reason: "not-bench-sheet" });
  });

  it("refuses what cannot be, and says in which row", () => {
    for (const [sheet, word] of [
      [benchSheet({ rows: rowsWith(noDrop) }), /Row 1.*pressure drop is missing/],
      [benchSheet({ rows: rowsWith({ pressureDrop: "3 Pa" }) }), /Row 1.*not larger than its own uncertainty/],
      [benchSheet({ rows: rowsWith({ pressureDrop: "0 Pa" }), uncertainties: {} }), /Row 1.*not larger/],
      [benchSheet({ rows: rowsWith({ pressureDrop: "101 kPa" }) }), /Row 1.*not below the pressure/],
      [benchSheet({ rows: rowsWith({ masterFlow: "3 g/s" }) }), /only a master meter/],
      [benchSheet({ rows: rowsWith({ temperature: "22" }) }), /rows\.0\.temperature.*no unit/],
      [benchSheet({ rows: rowsWith({ temperature: "220 degC" }) }), /out of range/],
      [benchSheet({ rows: rowsWith({ pressure: "20 kPa", temperature: "95 degC" }) }), /mostly vapour/],
      [benchSheet({ rows: rowsWith({ signal: "2.5" }) }), /not a signal/],
      [benchSheet({ rows: [...rowsWith({}), ...rowsWith({ signal: "80 Hz" })] }), /Row 6.*of another kind/],
      [benchSheet({ uncertainties: { signal: "1 Hz" } }), /does not fit the signals/],
      [benchSheet({ uncertainties: { temperature: "0.3 degC" } }), /in kelvin/],
      [
        benchSheet({ reference: { kind: "orifice-plate", pipeDiameter: "60 mm", boreDiameter: "60 mm" } }),
        /bore .* not smaller than its pipe/,
      ],
      [benchSheet({ reference: { kind: "elbow" } }), /reference/],
    ] as const) {
      const result = refusal(sheet);
      expect(result.message).toMatch(word);
      expect(result.reason).not.toBe("option-invalid");
    }
  });

  it("refuses a row at which the law of its reference gives no flow", () => {
    const reference = { kind: "isa-1932-nozzle", pipeDiameter: "100 mm", boreDiameter: "30 mm" };
    const tiny = rowsWith({ pressureDrop: "0.01 Pa" });
    const result = refusal(benchSheet({ reference, rows: tiny, uncertainties: {} }));
    expect(result.message).toMatch(/gives no flow there/);
  });
});
