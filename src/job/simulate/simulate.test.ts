import { describe, expect, it } from "vitest";
import { FAMILIES } from "../../model-engine/index.ts";
import { check } from "../check.ts";
import { parseEngineFile } from "../engine-file/parse-engine-file.ts";
import { wholeRecording } from "../understand.ts";
import { demo } from "./demo.ts";
import { type Simulated, simulate } from "./simulate.ts";
import type { SimulateOptions } from "./simulate-options.ts";

const SHORT: SimulateOptions = { protocol: "idle", duration: "80 s" };
const made = (options: SimulateOptions, base = SHORT): Simulated => {
  const result = simulate({ ...base, ...options }, "0");
  if (!result.ok) throw new Error(`${result.message} ${result.remedy}`);
  return result.value;
};
const rowsOf = (text: string) =>
  text
    .trimEnd()
    .split(/\r?\n/)
    .filter((line) => !line.startsWith("#"));
const columnOf = (truth: string, name: string) => {
  const [head, ...rows] = rowsOf(truth);
  const column = head!.split(",").indexOf(name);
  expect(column, name).toBeGreaterThanOrEqual(0);
  return rows.map((row) => Number(row.split(",")[column]));
};

describe("simulate", () => {
  it("writes for every family a recording, an engine file that the tool accepts, and the truth, all said to be invented", () => {
    for (const [i, family] of FAMILIES.entries()) {
      const { recording, engine, truth, sheet } = made({ family, recorder: i % 2 === 0 ? "tester" : "logger" });
      for (const text of [recording, truth]) expect(text, family).toMatch(/^# Invented: computed/);
      expect(JSON.parse(engine).note, family).toMatch(/^invented/);
      expect(sheet.notice).toMatch(/^Invented/);
      expect(sheet.headline).toMatch(/^Invented .* healthy\.$/);
      const parsed = parseEngineFile(engine);
      expect(parsed.ok ? "read" : parsed.message, family).toBe("read");
      expect(rowsOf(truth)).toHaveLength(801);
      expect(sheet.duration_s).toBeCloseTo(80, 9);
      expect(sheet.recorder.channels).toHaveLength(rowsOf(recording)[0]!.split(",").length - 1);
    }
  });

  it("is the same to the byte for the same options, and another for another seed", () => {
    expect(made({ seed: "7" })).toEqual(made({ seed: "7" }));
    expect(made({ seed: "7" }).recording).not.toBe(made({ seed: "8" }).recording);
  });

  it("keeps the engine when another seed records it, so that it can be recorded before and after mending", () => {
    const [before, after] = [made({ engineNumber: "5", seed: "1" }), made({ engineNumber: "5", seed: "2" })];
    expect(after.recording).not.toBe(before.recording);
    const idle = ({ sheet }: Simulated) => sheet.steps.find((step) => step.what === "idle")!.trims!;
    expect(Math.abs(idle(after) - idle(before))).toBeLessThan(0.01);
    expect(Math.abs(idle(made({ engineNumber: "6", seed: "2" })) - idle(before))).toBeGreaterThan(0.01);
  });

  it("plants what it is asked for, one or two faults, and tells it in the truth and never in the recording", () => {
    const { recording, truth, sheet } = made({ faults: ["manifold-leak=4mm2", "map-scaled=0.05 about zero"] });
    const leak = columnOf(truth, "leakFlow [g/s]")[600]!;
    expect(leak).toBeGreaterThan(0.5); // choked: 0.156 g/s a square millimetre
    expect(leak).toBeLessThan(0.63);
    expect(columnOf(made({}).truth, "leakFlow [g/s]")[600]).toBe(0);
    expect(truth).toContain("planted: manifold-leak 4 mm2, map-scaled 0.05 about zero.");
    expect(recording).not.toMatch(/leak|map-scaled/);
    expect(sheet.faults.map(({ cause, size, unit, pivot }) => [cause, size, unit, pivot])).toEqual([
      ["manifold-leak", 4, "mm2", null],
      ["map-scaled", 0.05, "1", "zero"],
    ]);
    const more = made({ faults: ["meter-curve-wrong=0.1 with 0.05 at 30 %", "fuel-supply-limited=2 g/s losing 0.3"] });
    expect(more.truth).toContain(
      "planted: meter-curve-wrong 0.1 with 0.05 at 30 %, fuel-supply-limited 2 g/s losing 0.3.",
    );
    expect(more.sheet.faults.map(({ errorAt30, loss, bank }) => [errorAt30, loss, bank])).toEqual([
      [0.05, null, null],
      [null, 0.3, null],
    ]);
    const idle = sheet.steps.find((step) => step.what === "idle")!;
    expect(Math.abs(idle.leaks_g_per_s - leak)).toBeLessThan(0.02);
  });

  it("stands where it is told: the barometer that is read follows altitude or barometer", () => {
    const baro = (options: SimulateOptions) => columnOf(made(options).truth, "manifoldPressure [kPa]")[0]!;
    expect(baro({ barometer: "90 kPa" })).toBeCloseTo(90, 1);
    expect(baro({ altitude: "2000 m" })).toBeCloseTo(79.5, 1); // ISO 2533
    expect(made({ temperature: "-10 degC" }).sheet.ambient.temperature_degC).toBeCloseTo(-10, 6);
  });

  it("writes as the recorder is told to", () => {
    const { recording } = made({
      names: "short",
      units: "row",
      decimalMark: "comma",
      time: "clock",
      lineEnd: "crlf",
      rate: "20",
      rows: "each-round",
    });
    const lines = recording.split("\r\n");
    expect(lines[1]).toMatch(/^TIME;RPM;MAP;/);
    expect(lines[2]).toMatch(/^;1?\/?\w*;kPa/);
    expect(lines[3]).toMatch(/^10:00:00\.000;0,00;/);
    const rounds = lines.length - 4;
    const { channels } = made({}).sheet.recorder;
    expect(Math.abs(rounds - (80 * 20) / channels.length)).toBeLessThan(6);
  });

  it("breaks off and sticks as it is told to", () => {
    const whole = rowsOf(made({ recorder: "logger" }).recording);
    const gaps = rowsOf(made({ recorder: "logger", dropouts: "6", dropoutLength: "1 s" }).recording);
    expect(gaps.length).toBeLessThan(whole.length);
    const stuck = rowsOf(made({ recorder: "logger", stuck: ["map from 60 s for 5 s"] }).recording);
    const pressure = stuck.slice(1).map((row) => row.split(",")[2]);
    expect(new Set(pressure.slice(600, 650)).size).toBe(1);
    expect(new Set(pressure.slice(500, 550)).size).toBeGreaterThan(1);
  });

  it("lasts as long as it is told to, to the step", () => {
    for (const [protocol, duration] of [
      ["road", "95 s"],
      ["standard-and-road", "300 s"],
      ["thorough", "5 min"],
    ] as const) {
      const { sheet } = made({ protocol, duration });
      const seconds = Number.parseFloat(duration) * (duration.endsWith("min") ? 60 : 1);
      expect(sheet.duration_s).toBeCloseTo(seconds, 2);
      expect(sheet.steps.at(-1)!.end_s).toBeCloseTo(seconds, 1);
    }
  });
});

describe("what simulate refuses", () => {
  it.each<readonly [SimulateOptions, string, string]>([
    [{ family: "steam" }, "option-invalid", "petrol-with-meter"],
    [{ seed: "1.5" }, "option-invalid", "whole number"],
    [{ seed: "-1" }, "option-invalid", "0 to"],
    [{ altitude: "4000 m" }, "option-invalid", "0 m to 2500 m"],
    [{ altitude: "100 m", barometer: "99 kPa" }, "option-invalid", "Give one"],
    [{ temperature: "warm" }, "option-invalid", "degC"],
    [{ temperature: "90 degC" }, "option-invalid", "-20 degC to 45 degC"],
    [{ humidity: "120 %" }, "option-invalid", "0 % to 100 %"],
    [{ protocol: "race" }, "option-invalid", "standard"],
    [{ duration: "20 s" }, "option-invalid", "too short"],
    [{ protocol: "standard", duration: "20 min" }, "option-invalid", "no more and no less"],
    [{ recorder: "notebook" }, "option-invalid", "tester, logger"],
    [{ rate: "120" }, "option-invalid", "1 to 100"],
    [{ recorder: "logger", rows: "sparse" }, "option-invalid", "whole rows"],
    [{ decimalMark: "comma", delimiter: "comma" }, "option-invalid", "cannot be both"],
    [{ stuck: ["MAP"] }, "option-invalid", "from 60 s for 30 s"],
    [{ stuck: ["boost from 1 s for 1 s"] }, "option-invalid", "It has: RPM"],
    [{ probe: "broad" }, "option-invalid", "narrow, wide"],
    [{ family: "diesel-with-egr", probe: "wide" }, "option-invalid", "no control probe"],
    [{ faults: ["manifold-leak"] }, "fault-unreadable", "manifold-leak=3.5 mm2"],
    [{ faults: ["flux=1"] }, "fault-unknown", "manifold-leak"],
    [{ faults: ["misfire=0.9"] }, "fault-out-of-range", "between"],
    [{ faults: ["misfire=0.1", "misfire=0.1"] }, "fault-repeated", "once"],
    [{ faults: ["vane-tilted=0.1"] }, "fault-misplaced", "needs a vane meter"],
    [{ family: "petrol-with-vortex", faults: ["meter-fouled=-0.1"] }, "fault-misplaced", "needs a heated meter"],
    [{ family: "petrol-with-pressure", faults: ["meter-scaled=0.9"] }, "fault-misplaced", "needs a meter"],
    [{ faults: ["misfire=0.1 bank 2"] }, "fault-misplaced", "has one bank of cylinders"],
    [{ faults: ["egr-low-flow=0.5"] }, "fault-misplaced", "needs an EGR valve"],
    [{ faults: ["boost-leak=20"] }, "fault-misplaced", "needs a compressor"],
  ])("%j: %s", (options, reason, word) => {
    const result = simulate({ ...SHORT, ...options }, "0");
    expect(result).toMatchObject({ ok: false, reason });
    if (!result.ok) expect(`${result.message} ${result.remedy}`).toContain(word);
  });
});

describe("demo", () => {
  it("is an invented engine with an invented leak, which the check finds as likely, of its size", () => {
    const { recording, engine, note } = demo();
    expect(note).toMatch(/invented/);
    expect(recording.text).toMatch(/^# Invented/);
    const outcome = check({
      recordings: [wholeRecording(recording.name, new TextEncoder().encode(recording.text), "0")],
      engine,
      channels: null,
      assumptions: null,
      toolVersion: "0",
      seed: 0,
    });
    if (!outcome.ok) throw new Error(outcome.message);
    const { answer, findings } = outcome.value.result;
    expect([answer, findings[0]!.cause]).toEqual(["likely", "manifold-leak"]);
    expect(findings[0]!.sizes[0]!.low90).toBeLessThan(5);
    expect(findings[0]!.sizes[0]!.high90).toBeGreaterThan(5);
  });
});
