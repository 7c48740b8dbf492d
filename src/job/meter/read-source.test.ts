import { describe, expect, it } from "vitest";
import { readMeterSource } from "./read-source.ts";
import { CURVE_CSV, ENGINE } from "./test-support/examples.ts";

const read = (text: string, choice: Parameters<typeof readMeterSource>[1] = {}) =>
  readMeterSource({ name: "f", text }, choice);

function refusal(text: string, choice: Parameters<typeof readMeterSource>[1] = {}) {
  const result = read(text, choice);
  return result.ok ? { reason: "none", message: "", where: undefined } : result;
}

const curveFile = (changes: object = {}) =>
  JSON.stringify({
    format: "airtally-curve/1",
    signalUnit: "V",
    flow: "mass",
    at: null,
    form: { kind: "king", still: 0.6, slope: 10, exponent: 0.5 },
    domain: [1, 2],
    band: null,
    ...changes,
  });

describe("readMeterSource", () => {
  it("reads an engine file, a curve file and a CSV, a byte-order mark before each", () => {
    for (const text of [ENGINE, curveFile(), CURVE_CSV])
      for (const mark of ["", "\uFEFF"]) expect(read(mark + text).ok).toBe(true);
  });

  it("knows the kind from the engine file alone, and the band from the CSV's sd", () => {
    const engine = read(ENGINE);
    const csv = read(CURVE_CSV);
    if (!engine.ok || !csv.ok) throw new Error("refused");
    expect(engine.value.kind).toBe("hot-wire");
    expect(csv.value.kind).toBeNull();
    expect(csv.value.curve.band).toEqual({ signal: [1, 2, 3, 4], sd: [2e-5, 1e-4, 4e-4, 1e-3] });
  });

  it("takes the meter asked for of an engine file with two", () => {
    const engine = JSON.parse(ENGINE);
    engine.meters = [
      { id: "meter", kind: "vane" },
      { ...engine.meters[0], id: "meter-2" },
    ];
    const text = JSON.stringify(engine);
    expect(read(text)).toMatchObject({ ok: true, value: { kind: "hot-wire" } });
    expect(refusal(text, { meter: "meter" }).message).toMatch(/no curve for its "meter"/);
  });

  it("refuses what is no curve, with its place", () => {
    const csvLine = (text: string) => refusal(text).where?.line;
    expect(refusal("").message).toMatch(/empty/);
    expect(refusal("{").reason).toBe("not-json");
    expect(refusal("{}").message).toMatch(/no stated format/);
    expect(refusal('{"format":"other/1"}').message).toMatch(/other\/1/);
    expect(refusal("a,b\n1,2\n").reason).toBe("unknown-column");
    expect(csvLine("signal [V],flow [g/s]\n1,2\n2,x\n")).toBe(3);
    expect(refusal("signal [V],flow [g/s]\n1,2\n2,4\n3,3\n").reason).toBe("curve-not-monotone");
    expect(refusal("signal [V],flow [g/s]\n1,2\n1,4\n").message).toMatch(/same signal/);
    expect(refusal("signal [V],flow [g/s]\n1,-2\n2,4\n", { kind: "vane" }).reason).toBe("curve-point-invalid");
  });

  it("does not pass over an air line that it cannot read, nor over an sd of another kind than the flow", () => {
    const air = refusal(CURVE_CSV.replace("101325 Pa", "101.325 kPa"));
    expect(air).toMatchObject({ reason: "air-line", where: { line: 1 } });
    expect(refusal(CURVE_CSV.replace("sd [g/s]", "sd [L/s]"))).toMatchObject({ where: { line: 2 } });
  });

  it("refuses a curve file that its law would trip over", () => {
    const film = { kind: "film", scaleFlow: 0.1, leak: 1, zero: 2.5, span: 2 };
    expect(read(curveFile({ form: film, domain: [1.5, 3.5] })).ok).toBe(true);
    for (const changes of [
      { form: { ...film, scaleFlow: 0 } },
      { form: { ...film, leak: -1 } },
      { form: { ...film, span: 0 } },
      { form: { kind: "king", still: 0.6, slope: 10, exponent: 0 } },
      { form: { kind: "polynomial", coefficients: [1, 1], centre: 0, halfWidth: 0 } },
      { form: { kind: "polynomial", coefficients: [1, 0, 1], centre: 1.5, halfWidth: 0.5 } },
      { form: { kind: "exponential", scale: 1, rate: 5000, offset: 0 } },
      { domain: [2, 1] },
      { band: { signal: [1, 2], sd: [0.1, -0.1] } },
      { at: { pressure_Pa: 101325, temperature_K: 5 } },
      { strange: 1 },
    ])
      expect(refusal(curveFile(changes)).reason, JSON.stringify(changes)).not.toBe("none");
  });
});
