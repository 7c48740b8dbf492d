import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { meterAmbient } from "./ambient.ts";
import { meterBench } from "./bench.ts";
import { meterConvert } from "./convert.ts";
import { meterCurve } from "./curve.ts";
import { meterFit } from "./fit.ts";
import { benchSheet, CURVE_CSV, ENGINE, kingPointsCsv } from "./test-support/examples.ts";

const KIND = fc.constantFrom("vane", "vortex", "hot-wire", "hot-film") as fc.Arbitrary<"vane" | "vortex">;
const toolVersion = "0";

const curveFile = {
  format: "airtally-curve/1",
  signalUnit: "V",
  flow: "mass",
  at: { pressure_Pa: 101_325, temperature_K: 293.15 },
  form: { kind: "king", still: 0.6, slope: 10, exponent: 0.5 },
  domain: [1, 2],
  band: { signal: [1, 2], sd: [1e-4, 1e-3] },
};

/** Puts another value at one place of a document. */
function mutated(document: unknown, place: number, value: unknown): unknown {
  const places: [object, string][] = [];
  const visit = (node: unknown) => {
    if (typeof node !== "object" || node === null) return;
    for (const key of Object.keys(node)) {
      places.push([node, key]);
      visit((node as Record<string, unknown>)[key]);
    }
  };
  const copy = structuredClone(document);
  visit(copy);
  const [owner, key] = places[place % places.length]!;
  (owner as Record<string, unknown>)[key] = value;
  return copy;
}

const ODD = fc.oneof(
  fc.double({ noNaN: true }),
  fc.constantFrom(
    0,
    -1,
    1e-300,
    1e300,
    null,
    "",
    "0 V",
    "-5 V",
    "1e9 kPa",
    "0 Pa",
    "1 Pa",
    "100 %",
    "0 %",
    "0 mm",
    "1e-9 m",
    "-60 degC",
  ),
  fc.constantFrom([], {}, [1, 1], [2, 1], [[1, 1]], "vane", "film", "points", "polynomial", "ms", "volume"),
);

/** Every call ends with a value or a reason: nothing is thrown, no number is none. */
function expectAnswer(result: { ok: boolean; value?: unknown; message?: string; remedy?: string }) {
  if (!result.ok) {
    expect(result.message).not.toBe("");
    expect(result.remedy).not.toBe("");
    return;
  }
  const walk = (node: unknown): void => {
    if (typeof node === "number") expect(Number.isFinite(node)).toBe(true);
    else if (typeof node === "object" && node !== null) for (const part of Object.values(node)) walk(part);
  };
  walk(result.value);
}

function everyCurveCommand(text: string, kind: "vane" | "vortex") {
  const file = { name: "f", text };
  const air = { pressure: "90 kPa", temperature: "10 degC", humidity: "50 %" };
  const uncertainty = { curveError: "1 %", temperatureError: "2 K", pressureError: "1 kPa" };
  const signals = ["0", "1.3", "2", "-4", "1e9"];
  expectAnswer(
    meterConvert({ file, kind, signals, flows: ["0 g/s", "-3 g/s", "20 g/s"], air, uncertainty, toolVersion }),
  );
  expectAnswer(meterCurve({ file, kind, air, rows: 7, toolVersion }));
  expectAnswer(meterCurve({ file, air: {}, rows: 7, toolVersion }));
  expectAnswer(meterAmbient({ file, kind, options: {}, toolVersion }));
}

describe("airtally meter", () => {
  it("answers or refuses any curve file with something odd in it", () => {
    fc.assert(
      fc.property(fc.nat(30), ODD, KIND, (place, value, kind) => {
        everyCurveCommand(JSON.stringify(mutated(curveFile, place, value)), kind);
      }),
      { numRuns: 300 },
    );
  });

  it("answers or refuses any engine file with something odd in its meter", () => {
    const engine = JSON.parse(ENGINE);
    fc.assert(
      fc.property(fc.nat(60), ODD, (place, value) => {
        const meters = mutated(engine.meters, place, value);
        everyCurveCommand(JSON.stringify({ ...engine, meters }), "vane");
      }),
      { numRuns: 200 },
    );
  });

  it("answers or refuses any CSV with something odd in a cell", () => {
    fc.assert(
      fc.property(fc.nat(CURVE_CSV.length), fc.string({ maxLength: 4 }), KIND, (at, odd, kind) => {
        const text = CURVE_CSV.slice(0, at) + odd + CURVE_CSV.slice(at + 1);
        everyCurveCommand(text, kind);
        expectAnswer(meterFit({ file: { name: "f", text }, toolVersion }));
      }),
      { numRuns: 200 },
    );
  });

  it("answers or refuses any bench sheet with something odd in it", () => {
    fc.assert(
      fc.property(fc.nat(60), ODD, (place, value) => {
        const text = JSON.stringify(mutated(benchSheet(), place, value));
        expectAnswer(meterBench({ file: { name: "f", text }, toolVersion }));
      }),
      { numRuns: 300 },
    );
  });

  it("answers or refuses any bench points with something odd among them", () => {
    const lines = kingPointsCsv().trimEnd().split("\n");
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 8 }), fc.nat(2), ODD, (line, cell, odd) => {
        const cells = lines[line]!.split(",").with(cell, String(odd));
        const text = lines.with(line, cells.join(",")).join("\n");
        expectAnswer(meterFit({ file: { name: "f", text }, toolVersion }));
      }),
      { numRuns: 150 },
    );
  });

  it("goes from signal to flow and back over the whole curve, in any air", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.001, max: 3.999, noNaN: true }),
        fc.double({ min: 50, max: 110, noNaN: true }),
        fc.double({ min: -30, max: 60, noNaN: true }),
        KIND,
        (signal, pressure, temperature, kind) => {
          const air = { pressure: `${pressure} kPa`, temperature: `${temperature} degC` };
          const common = { file: { name: "f", text: CURVE_CSV }, kind, air, uncertainty: {}, toolVersion };
          const there = meterConvert({ ...common, signals: [`${signal} V`], flows: [] });
          if (!there.ok) throw new Error(there.message);
          const flow = there.value.signals[0]!.massFlow_g_per_s!;
          const back = meterConvert({ ...common, signals: [], flows: [`${flow} g/s`] });
          if (!back.ok) throw new Error(back.message);
          expect(Math.abs(back.value.flows[0]!.signal! - signal)).toBeLessThan(1e-4);
        },
      ),
      { numRuns: 150 },
    );
  });

  it("answers or refuses any ambient options within their ranges and at their ends", () => {
    const between = (low: number, high: number, unit: string) =>
      fc.option(
        fc
          .oneof(fc.double({ min: low, max: high, noNaN: true }), fc.constantFrom(low, high))
          .map((v) => `${v} ${unit}`),
        { nil: undefined },
      );
    const options = fc.record({
      altitudes: between(-430, 6000, "m"),
      temperatures: between(-60, 100, "degC"),
      seaLevelTemperature: between(-40, 60, "degC"),
      filmCoefficient: between(-0.3, 0.3, "%"),
      bore: between(5, 500, "mm"),
      wireDiameter: between(0.001, 2, "mm"),
      wireLength: between(0.1, 1000, "mm"),
      overheat: between(20, 150, "K"),
      flow: between(0.01, 5000, "g/s"),
    });
    const vane = fc.record({
      flapTorque: between(0, 100, "%"),
      preload: between(1, 100, "%"),
      tilts: between(-45, 45, "deg"),
    });
    fc.assert(
      fc.property(options, vane, (all, { flapTorque, preload, tilts }) => {
        const { altitudes, temperatures, seaLevelTemperature, filmCoefficient, ...wire } = all;
        const air = { altitudes, temperatures, seaLevelTemperature };
        const file = null;
        expectAnswer(meterAmbient({ file, kind: "hot-wire", options: { ...air, ...wire }, toolVersion }));
        expectAnswer(meterAmbient({ file, kind: "hot-film", options: { ...air, filmCoefficient }, toolVersion }));
        expectAnswer(
          meterAmbient({ file, kind: "vane", options: { ...air, flapTorque, preload, tilts }, toolVersion }),
        );
      }),
      { numRuns: 300 },
    );
  });
});
