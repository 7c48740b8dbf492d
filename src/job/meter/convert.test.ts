import { describe, expect, it } from "vitest";
import { type MeterConvertInput, meterConvert } from "./convert.ts";
import { CURVE_CSV, ENGINE, VORTEX_CSV } from "./test-support/examples.ts";

function convert(text: string, more: Partial<MeterConvertInput> = {}) {
  return meterConvert({
    file: { name: "invented.csv", text },
    signals: [],
    flows: [],
    air: {},
    uncertainty: {},
    toolVersion: "0",
    ...more,
  });
}

function value(text: string, more: Partial<MeterConvertInput>) {
  const result = convert(text, more);
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

const refusal = (text: string, more: Partial<MeterConvertInput>) => {
  const result = convert(text, more);
  return result.ok ? { reason: "none", message: "", remedy: "" } : result;
};

describe("meterConvert", () => {
  it("reads the points of an engine file's curve as they stand, in the site's air", () => {
    const { signals, air, headline, meter } = value(ENGINE, { signals: ["2"] });
    expect(signals[0]).toMatchObject({ signal: 2, massFlow_g_per_s: 17.5, where: "inside", sd_g_per_s: null });
    expect(air).toMatchObject({ pressure_kPa: 98.9, temperature_degC: 12, pressureFrom: "engine file" });
    expect(headline).toBe("2 V is 17.5 g/s of air.");
    expect(meter).toMatchObject({ kind: "hot-wire", signalFrom: 0.98, signalTo: 4.4 });
  });

  it("takes the air from the call, then the site, then the curve, then assumes", () => {
    const { air } = value(ENGINE, { signals: ["2"], air: { temperature: "40 degC" } });
    expect(air).toMatchObject({ temperatureFrom: "stated", pressureFrom: "engine file" });
    expect(value(CURVE_CSV, { signals: ["2"], kind: "vane" }).air.pressureFrom).toBe("curve");
    const bare = CURVE_CSV.split("\n").slice(1).join("\n");
    const assumed = value(bare, { signals: ["2"], kind: "vane" });
    expect(assumed.air.pressureFrom).toBe("assumed");
    expect(assumed.warnings.map((w) => w.code)).toContain("curve-air-assumed");
    expect(value(bare, { signals: ["2"], kind: "hot-wire" }).warnings).toEqual([]);
  });

  it("lets density in by what the kind senses: all of it, its root, or nothing", () => {
    const thin = { pressure: "81.06 kPa", temperature: "20 degC" }; // 0.8 of 101.325
    const flow = (kind: "vane" | "vortex" | "hot-wire") =>
      value(CURVE_CSV, { signals: ["3 V"], kind, air: thin }).signals[0]!.massFlow_g_per_s!;
    expect(flow("hot-wire")).toBeCloseTo(70, 4);
    expect(flow("vane") / 70).toBeCloseTo(Math.sqrt(0.8), 5);
    expect(flow("vortex") / 70).toBeCloseTo(0.8, 5);
  });

  it("reads a vortex meter's volume, and its mass by the density of this air", () => {
    const { signals } = value(VORTEX_CSV, { signals: ["1000 Hz", "1 kHz"], kind: "vortex" });
    expect(signals[0]!.volumeFlow_L_per_s).toBeCloseTo(20, 3);
    expect(signals[0]!.massFlow_g_per_s).toBeCloseTo(20 * (100_000 / (287.05 * 300)), 2);
    expect(signals[1]).toEqual(signals[0]);
  });

  it("goes back from flow to the signal it came from", () => {
    const there = value(CURVE_CSV, { signals: ["2.5"], kind: "vane", air: { pressure: "90 kPa" } });
    const flow = `${there.signals[0]!.massFlow_g_per_s} g/s`;
    const back = value(CURVE_CSV, { flows: [flow], kind: "vane", air: { pressure: "90 kPa" } });
    expect(back.flows[0]!.signal).toBeCloseTo(2.5, 4);
    expect(back.headline).toMatch(/of air gives 2\.5 V\.$/);
  });

  it("finds the signal of a flow that is a point of the curve, whatever the rounding between two points", () => {
    for (let k = 0; k < 200; k++) {
      const points = [
        [1, 2],
        [1.5 + k * 1e-3, 8 + (k % 7)],
        [2.2, 20],
        [3, 70 + (k % 11)],
        [4, 180],
      ] as const;
      const text = `signal [V],flow [g/s]\n${points.map((p) => p.join(",")).join("\n")}\n`;
      const flows = points.map(([, flow]) => `${flow} g/s`);
      const back = value(text, { flows, kind: k % 2 === 0 ? "hot-wire" : "vane", air: { pressure: "101.325 kPa" } });
      expect(back.flows.map((row) => row.where)).toEqual(points.map(() => "inside"));
      for (const [i, [signal]] of points.entries()) expect(back.flows[i]!.signal).toBeCloseTo(signal, 6);
    }
  });

  it("tells an interval from the curve's own band, widened by what is stated, with the shares", () => {
    const plain = value(CURVE_CSV, { signals: ["2"], kind: "hot-wire" }).signals[0]!;
    expect(plain.sd_g_per_s).toBeCloseTo(0.1, 6);
    expect(plain.high90_g_per_s! - plain.massFlow_g_per_s!).toBeCloseTo(0.16449, 4);
    const wide = value(CURVE_CSV, { signals: ["2"], kind: "hot-wire", uncertainty: { curveError: "1 %" } }).signals[0]!;
    expect(wide.sd_g_per_s).toBeCloseTo(Math.hypot(0.1, 0.2), 5);
    expect(wide.budget[0]).toMatchObject({ name: "curve, relative" });
    expect(wide.budget.reduce((sum, line) => sum + line.share, 0)).toBeCloseTo(1, 5);
  });

  it("says beyond which end of the curve a signal or flow lies", () => {
    const result = value(CURVE_CSV, { signals: ["0.9", "4.5", "3"], flows: ["500 g/s"], kind: "hot-wire" });
    expect(result.signals.map((s) => s.where)).toEqual(["below", "above", "inside"]);
    expect(result.flows[0]!.where).toBe("above");
    expect(result.warnings.map((w) => w.code)).toEqual(["beyond-curve"]);
  });

  it("has no flow for a period of nought, and says so instead of a number", () => {
    const periods = "signal [ms],flow [g/s]\n0.2,180\n1,20\n5,2\n";
    const { signals, headline } = value(periods, { signals: ["0 ms"], kind: "hot-film" });
    expect(signals[0]).toMatchObject({ where: "no-flow", massFlow_g_per_s: null });
    expect(headline).toBe("0 ms has no flow on this curve.");
    const inside = value(periods, { signals: ["1", "1000 us"], kind: "hot-film" });
    expect(inside.signals[0]!.massFlow_g_per_s).toBeCloseTo(20, 6);
    expect(inside.signals[1]).toEqual(inside.signals[0]);
  });

  it("draws the curve in the same air as it converts", () => {
    const { drawing, signals } = value(CURVE_CSV, { signals: ["4"], kind: "vane", air: { pressure: "80 kPa" } });
    expect(drawing).toHaveLength(97);
    expect(drawing.at(-1)!.massFlow_g_per_s).toBe(signals[0]!.massFlow_g_per_s);
    expect(drawing.at(-1)!.high90_g_per_s).toBeCloseTo(signals[0]!.high90_g_per_s!, 2);
  });

  it("refuses a call that is off, each with what to do", () => {
    const off = (more: Partial<MeterConvertInput>, text = CURVE_CSV) => refusal(text, { kind: "vane", ...more });
    for (const [result, word] of [
      [off({}), /nothing to convert/],
      [off({ signals: ["two"] }), /"two" is not a signal/],
      [off({ signals: ["2 Hz"] }), /not a signal of this meter/],
      [off({ flows: ["20 L/s"] }), /not a unit of mass flow/],
      [off({ signals: ["2"], air: { pressure: "1 bar", temperature: "12" } }), /no unit/],
      [off({ signals: ["2"], air: { pressure: "1 Pa" } }), /out of range/],
      [off({ signals: ["2"], air: { humidity: "80 %", temperature: "110 degC" } }), /no meaning/],
      [off({ signals: ["2"], air: { humidity: "100 %", temperature: "95 degC" } }), /mostly vapour/],
      [off({ signals: ["2"], uncertainty: { signalError: "-1 mV" } }), /below zero/],
      [off({ signals: ["2"], uncertainty: { temperatureError: "2 degC" } }), /difference of temperature/],
      [off({ signals: ["2"], kind: "vane" }, ENGINE), /says that its meter is a hot-wire/],
      [refusal(CURVE_CSV, { signals: ["2"] }), /does not say what kind/],
    ] as const) {
      expect(result.reason).toBe("option-invalid");
      expect(result.message).toMatch(word);
      expect(result.remedy).not.toBe("");
    }
  });

  it("knows which signals no meter gives, there and back", () => {
    const ratio = "signal [ratio],flow [g/s]\n0.9,2\n0.1,140\n";
    expect(refusal(ratio, { signals: ["130 %"], kind: "vane" })).toMatchObject({ reason: "option-invalid" });
    expect(refusal(ratio, { signals: ["-0.1"], kind: "vane" }).remedy).toMatch(/from 0 to 1/);
    expect(refusal(VORTEX_CSV, { signals: ["-5 Hz"], kind: "vortex" }).message).toBe('No meter gives "-5 Hz".');
    const beyond = value(ratio, { flows: ["300 g/s"], kind: "vane" });
    expect(beyond.flows[0]).toMatchObject({ where: "no-signal", signal: null });
    expect(beyond.headline).toBe("No signal of this meter stands for 300 g/s.");
  });

  it("adds what counting pulses over a gate leaves open, of a frequency alone", () => {
    const sd = (uncertainty: object) =>
      value(VORTEX_CSV, { signals: ["1000 Hz"], kind: "vortex", uncertainty }).signals[0]!.sd_g_per_s!;
    const tenth = sd({ gate: "0.1 s" });
    // one pulse in a hundred, rectangular, at the slope of the curve
    const { massFlow_g_per_s: flow } = value(VORTEX_CSV, { signals: ["1000 Hz"], kind: "vortex" }).signals[0]!;
    expect(tenth / flow!).toBeCloseTo(0.01 / Math.sqrt(12), 4);
    expect(sd({ gate: "1 s" }) / tenth).toBeCloseTo(0.1, 4);
    expect(sd({ gate: "0.1 s", signalError: "4 Hz" })).toBeGreaterThan(tenth);
    expect(refusal(CURVE_CSV, { signals: ["2"], kind: "vane", uncertainty: { gate: "1 s" } }).message).toMatch(
      /read in V/,
    );
  });
});
