// Real recordings, parts of open data sets under their own licences (test/recordings/*/NOTICE.md). Nothing here is tuned to
// them but what their notices say of the engines.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { speedDensityFlow } from "../../src/engine/index.ts";
import { check, wholeRecording } from "../../src/job/index.ts";
import type { AirtallyResult } from "../../src/job/result.ts";
import { engineFile } from "./command-line.ts";

const bytesOf = (path: string) => readFileSync(new URL(`../recordings/${path}`, import.meta.url));

function answer(bytes: Uint8Array, engine: string): AirtallyResult {
  const outcome = check({
    recordings: [wholeRecording("recording.csv", bytes, "")],
    engine,
    channels: null,
    assumptions: null,
    toolVersion: "0.0.0",
    seed: 0,
  });
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.value.result;
}

/** Multiplies one column of a comma-separated text. */
function scaled(bytes: Uint8Array, header: RegExp, factor: number): Uint8Array {
  const lines = new TextDecoder().decode(bytes).split("\n");
  const column = lines[0]!.split(",").findIndex((h) => header.test(h));
  const changed = lines.map((line, i) => {
    const cells = line.split(",");
    if (i > 0 && cells[column] !== undefined && cells[column] !== "")
      cells[column] = (Number(cells[column]) * factor).toFixed(2);
    return cells.join(",");
  });
  return new TextEncoder().encode(changed.join("\n"));
}

const sum = (result: AirtallyResult) =>
  result.healthyProbability +
  result.unexplainedProbability +
  result.othersProbability +
  result.explanations.reduce((s, e) => s + e.probability, 0);

const chance = (result: AirtallyResult, cause: string) => result.findings.find((f) => f.cause === cause)!.probability;
const METER = ["meter-scaled", "meter-offset", "meter-fouled"];

describe("a healthy boosted diesel that recirculates exhaust gas, its EGR command not recorded", () => {
  const DIESEL = engineFile({
    displacement: "1970 cm3",
    fuel: "diesel",
    induction: "boosted",
    metering: "pedal",
    egr: "fitted",
    egrControl: "meter",
  });
  const asMeasured = bytesOf("kit-obd/idle-town-and-road.csv");
  const original = answer(asMeasured, DIESEL);
  const flow = /Air Flow Rate/;

  it("accuses no meter, and tells the missing air as recirculation with its doubt", () => {
    for (const cause of METER) expect(chance(original, cause)).toBeLessThan(0.5);
    const told = original.warnings.find((w) => w.code === "recirculation-inferred")!.text;
    expect(told).toMatch(/at idle/);
    expect(told).toMatch(/overrun/);
    expect(told).toMatch(/part load/);
    expect(told).toMatch(/±/);
    expect(sum(original)).toBeCloseTo(1, 3);
  });

  it("says of a meter at 0.8 that it cannot be told from EGR, asks for what would, and does not call it healthier", () => {
    const low = answer(scaled(asMeasured, flow, 0.8), DIESEL);
    for (const cause of METER) expect(chance(low, cause)).toBeLessThan(0.5);
    const told = low.warnings.find((w) => w.code === "recirculation-inferred")!.text;
    expect(told).toMatch(/reads low looks the same/);
    expect(told).toMatch(/EGR blocked/);
    expect(told).toMatch(/full-load pull/);
    expect(low.healthyProbability).toBeLessThanOrEqual(original.healthyProbability);
  });

  it("reports a meter at 1.6 as over-reading, because recirculation cannot be negative", () => {
    const high = answer(scaled(asMeasured, flow, 1.6), DIESEL);
    const first = high.findings[0]!;
    expect(first.cause).toBe("meter-scaled");
    // One factor or a wrong curve: along the few points where recirculation is shut they look alike.
    expect(first.probability + chance(high, "meter-curve-wrong")).toBeGreaterThan(0.5);
    expect(first.sizes[0]!.low90).toBeGreaterThan(1.1);
    expect(first.sizes[0]!.high90).toBeGreaterThan(1.5);
    expect(high.healthyProbability).toBeLessThan(0.1);
  });

  it("finds the other parts of the set no worse", () => {
    for (const part of ["kit-obd/start-and-idle.csv", "kit-obd/impossible-intake-temperature.csv"]) {
      const result = answer(bytesOf(part), DIESEL);
      for (const cause of METER) expect(chance(result, cause)).toBeLessThan(0.5);
    }
  });
});

describe("a petrol engine whose 'calculated' flow is made of pressure, speed and temperature", () => {
  const PETROL = engineFile({ displacement: "1086 cm3", volumetricEfficiency: { value: 0.85 } });
  const bytes = bytesOf("envirocar/petrol-1086.csv");

  // Source: the data set's own column, computed by its project with an assumed volumetric efficiency of 0.85 and the ideal gas law.
  it("equals speed-density with 0.85 to 0.1 % in every row", () => {
    const [, header, ...rows] = new TextDecoder()
      .decode(bytes)
      .trim()
      .split("\n")
      .map((line) => line.split(","));
    const at = (name: string) => header!.indexOf(name);
    let worst = 0;
    const complete = rows.filter((row) => row.every((cell) => cell !== ""));
    for (const row of complete) {
      const flow = speedDensityFlow({
        manifoldPressure: Number(row[at("Intake Pressure")]) * 1000,
        displacement: 1086e-6,
        engineSpeed: Number(row[at("Rpm")]) / 60,
        chargeTemperature: Number(row[at("Intake Temperature")]) + 273.15,
        volumetricEfficiency: 0.85,
      });
      worst = Math.max(worst, Math.abs((1000 * flow) / Number(row[at("Calculated MAF")]) - 1));
    }
    expect(complete.length).toBeGreaterThan(90);
    expect(worst).toBeLessThan(0.001);
  });

  it("is told to be computed and takes no part: pressure remains, and a throttle of unknown bore that adds next to nothing", () => {
    const result = answer(bytes, PETROL);
    expect(result.warnings.map((w) => w.code)).toContain("computed-channel");
    expect(result.operatingPoints.every((p) => p.witnesses.meter === undefined)).toBe(true);
    for (const finding of result.findings) expect(finding.probability).toBeLessThan(finding.priorProbability * 1.5);
    for (const point of result.operatingPoints)
      expect(Math.abs(point.air_g_per_s! / point.witnesses.pressure!.massFlow_g_per_s - 1)).toBeLessThan(0.1);
  });
});

describe("a diesel with a real meter and an intake temperature stuck at 0", () => {
  it("reports the dead sensor and accuses no meter", () => {
    const result = answer(
      bytesOf("envirocar/diesel-stuck-temperature.csv"),
      engineFile({ displacement: "2299 cm3", fuel: "diesel", induction: "boosted", metering: "pedal", egr: "fitted" }),
    );
    expect(result.warnings.find((w) => w.code === "dead-sensor")!.text).toMatch(/Intake Temperature/);
    for (const cause of METER) expect(chance(result, cause)).toBeLessThan(0.5);
  });
});
