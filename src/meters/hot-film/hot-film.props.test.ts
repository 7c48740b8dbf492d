import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { filmTemperatureRatio } from "./film-air-temperature.ts";
import { filmMassFlow, filmSignal } from "./film-law.ts";
import { filmOutput, filmSignalOfOutput } from "./film-output.ts";
import { filmPulsationRatio } from "./film-pulsation.ts";

const LAW = { scaleFlow: 0.05, leak: 0.8 };
const flow = fc.double({ min: -0.3, max: 0.3, noNaN: true });
const leak = fc.double({ min: 0.05, max: 3, noNaN: true });

describe("film law", () => {
  it("gives the signed flow back from its signal", () => {
    fc.assert(
      fc.property(flow, leak, (m, k) => {
        const law = { scaleFlow: 0.05, leak: k };
        const back = filmMassFlow(law, filmSignal(law, m));
        expect(back).not.toBeNull();
        expect(Math.abs(back! - m)).toBeLessThan(1e-8);
      }),
    );
  });

  it("is odd, rises everywhere and stays within its limits", () => {
    fc.assert(
      fc.property(flow, leak, (m, k) => {
        const law = { scaleFlow: 0.05, leak: k };
        expect(filmSignal(law, -m)).toBeCloseTo(-filmSignal(law, m), 15);
        expect(filmSignal(law, m + 1e-5)).toBeGreaterThan(filmSignal(law, m));
        expect(Math.abs(filmSignal(law, m))).toBeLessThan(1);
      }),
    );
    expect(filmSignal(LAW, 0)).toBe(0);
    expect(filmMassFlow(LAW, 0)).toBe(0);
  });

  it("has the slope 2 exp(-k)/m0 at rest", () => {
    const h = 1e-7;
    expect((filmSignal(LAW, h) - filmSignal(LAW, -h)) / (2 * h)).toBeCloseTo(
      (2 * Math.exp(-LAW.leak)) / LAW.scaleFlow,
      4,
    );
  });

  it("has no flow at or beyond its limits", () => {
    expect(filmMassFlow(LAW, 1)).toBeNull();
    expect(filmMassFlow(LAW, -1.2)).toBeNull();
    expect(() => filmMassFlow(LAW, Number.NaN)).toThrow(/signal/);
  });
});

describe("output stage", () => {
  it("converts both ways as voltage, frequency and period", () => {
    for (const output of [
      { kind: "voltage", zero: 1, span: 3.5 },
      { kind: "frequency", zero: 2000, span: -900 },
      { kind: "period", zero: 2000, span: -900 },
    ] as const) {
      fc.assert(
        fc.property(fc.double({ min: -1, max: 1, noNaN: true }), (s) => {
          expect(filmSignalOfOutput(output, filmOutput(output, s))).toBeCloseTo(s, 11);
        }),
      );
    }
  });

  it("refuses a period of a frequency that crosses zero", () => {
    expect(() => filmOutput({ kind: "period", zero: 100, span: 200 }, -0.9)).toThrow(/frequency/);
  });
});

describe("residual temperature and pulsation", () => {
  it("is none at calibration", () => {
    const at = { coefficient: 5e-4, calibrationTemperature: 293.15 };
    expect(filmTemperatureRatio({ ...at, temperature: 293.15 })).toBe(1);
    expect(filmTemperatureRatio({ ...at, temperature: 333.15 })).toBeCloseTo(1.02, 12);
    expect(() => filmTemperatureRatio({ ...at, coefficient: 1, temperature: 400 })).toThrow(/temperature error/);
  });

  it("is exact through reversal when linearised at once, and low where the signal is averaged first", () => {
    const stream = { meanFlow: 0.05, amplitude: 1.5 };
    expect(filmPulsationRatio(LAW, stream, "flow")).toBe(1);
    expect(filmPulsationRatio(LAW, stream, "signal")).toBeLessThan(1);
    expect(filmPulsationRatio(LAW, { ...stream, amplitude: 0 }, "signal")).toBeCloseTo(1, 10);
  });

  it("loses its pulsation error to its own lag", () => {
    const stream = { meanFlow: 0.05, amplitude: 1, frequency: 100 };
    const fast = filmPulsationRatio(LAW, stream, "signal");
    const slow = filmPulsationRatio(LAW, { ...stream, timeConstant: 0.05 }, "signal");
    expect(Math.abs(slow - 1)).toBeLessThan(0.01 * Math.abs(fast - 1));
  });
});
