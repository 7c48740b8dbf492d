import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  chokedFlowFunction,
  criticalPressureRatio,
  orificeFlowFunction,
  orificeFlowFunctionSlope,
} from "./orifice-flow-function.ts";
import { orificeMassFlow } from "./orifice-mass-flow.ts";
import { smoothedOrificeFlowFunction } from "./smoothed-orifice-flow.ts";

const gamma = fc.double({ min: 1.05, max: 1.67, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });
const HOLE = { dischargeCoefficient: 0.65, area: 1e-5, upstreamTemperature: 293.15 };

describe("orificeFlowFunction", () => {
  it("is monotone to rounding next to a pressure ratio of one, where the textbook form is not", () => {
    const plain = (r: number): number => Math.sqrt(7 * (r ** (2 / 1.4) - r ** (2.4 / 1.4)));
    let broken = 0;
    for (let k = 1; k < 20_000; k++) {
      const above = 1 - k * 2 ** -53;
      const below = 1 - (k + 1) * 2 ** -53;
      expect(orificeFlowFunction(below)).toBeGreaterThanOrEqual(orificeFlowFunction(above));
      if (!(plain(below) >= plain(above))) broken++;
    }
    expect(broken).toBeGreaterThan(100);
  });

  it("falls with the pressure ratio everywhere", () => {
    fc.assert(
      fc.property(gamma, share, share, (g, a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(orificeFlowFunction(low, g)).toBeGreaterThanOrEqual(orificeFlowFunction(high, g) - 1e-15);
      }),
    );
  });

  it("goes into choking without a step in value or slope, and stays there", () => {
    fc.assert(
      fc.property(gamma, share, (g, s) => {
        const critical = criticalPressureRatio(g);
        expect(orificeFlowFunction(critical * s, g)).toBeCloseTo(chokedFlowFunction(g), 12);
        expect(orificeFlowFunction(critical * (1 + 1e-9), g)).toBeCloseTo(chokedFlowFunction(g), 12);
        expect(orificeFlowFunctionSlope(critical * (1 + 1e-7), g)).toBeCloseTo(0, 5);
      }),
    );
  });

  it("has the slope that a finite difference shows", () => {
    fc.assert(
      fc.property(gamma, share, (g, s) => {
        const critical = criticalPressureRatio(g);
        const r = critical + (0.999 - critical) * (0.001 + 0.998 * s);
        const h = 1e-6;
        const difference = (orificeFlowFunction(r + h, g) - orificeFlowFunction(r - h, g)) / (2 * h);
        expect(orificeFlowFunctionSlope(r, g)).toBeCloseTo(difference, 4);
      }),
    );
  });

  it("tends to the incompressible orifice at small differences: sqrt(2 (1 - r))", () => {
    for (const drop of [1e-3, 1e-5, 1e-8]) {
      expect(orificeFlowFunction(1 - drop) / Math.sqrt(2 * drop)).toBeCloseTo(1, -Math.log10(drop) - 1);
    }
  });

  it("refuses what is not a number or below zero", () => {
    expect(() => orificeFlowFunction(Number.NaN)).toThrow(/pressure ratio/);
    expect(() => orificeFlowFunction(-0.1)).toThrow(/pressure ratio/);
    expect(() => orificeFlowFunction(0.5, 1)).toThrow(/specific heats/);
  });
});

describe("orificeMassFlow", () => {
  const pressure = fc.double({ min: 1000, max: 300_000, noNaN: true });

  it("reverses its sign when the sides are swapped", () => {
    fc.assert(
      fc.property(pressure, pressure, (a, b) => {
        const forward = orificeMassFlow({ ...HOLE, upstreamPressure: a, downstreamPressure: b });
        const backward = orificeMassFlow({ ...HOLE, upstreamPressure: b, downstreamPressure: a });
        expect(forward).toBeCloseTo(-backward, 15);
      }),
    );
  });

  it("rises with the upstream pressure and falls with the downstream pressure", () => {
    fc.assert(
      fc.property(pressure, pressure, share, (a, b, s) => {
        const flow = (up: number, down: number) =>
          orificeMassFlow({ ...HOLE, upstreamPressure: up, downstreamPressure: down });
        expect(flow(a * (1 + s), b)).toBeGreaterThanOrEqual(flow(a, b) - 1e-18);
        expect(flow(a, b * (1 + s))).toBeLessThanOrEqual(flow(a, b) + 1e-18);
      }),
    );
  });

  it("goes through zero without a step", () => {
    for (const drop of [1, 1e-3, 1e-9]) {
      const flow = orificeMassFlow({ ...HOLE, upstreamPressure: 100_000, downstreamPressure: 100_000 - drop });
      expect(Math.abs(flow)).toBeLessThan(1.1e-5 * Math.sqrt(drop));
      expect(flow).toBeGreaterThan(0);
    }
    expect(orificeMassFlow({ ...HOLE, upstreamPressure: 5, downstreamPressure: 5 })).toBe(0);
  });

  it("lets 0.155 g/s through each choked square millimetre at discharge 0.65, one atmosphere and 20 degC", () => {
    const flow = orificeMassFlow({ ...HOLE, area: 1e-6, upstreamPressure: 101_325, downstreamPressure: 30_000 });
    expect(flow * 1000).toBeCloseTo(0.1555, 4);
  });

  it("takes the temperature of the side it flows from", () => {
    const swapped = orificeMassFlow({
      ...HOLE,
      upstreamPressure: 50_000,
      downstreamPressure: 100_000,
      downstreamTemperature: 4 * 293.15,
    });
    const plain = orificeMassFlow({ ...HOLE, upstreamPressure: 50_000, downstreamPressure: 100_000 });
    expect(swapped / plain).toBeCloseTo(0.5, 12);
  });
});

describe("smoothedOrificeFlowFunction", () => {
  const smoothed = smoothedOrificeFlowFunction(0.01);

  it("is the law itself outside the smoothed stretch and joins it without a step or a kink", () => {
    expect(smoothed(0.9)).toBe(orificeFlowFunction(0.9));
    const h = 1e-7;
    const join = 0.99;
    expect(smoothed(join + h)).toBeCloseTo(orificeFlowFunction(join), 5);
    const after = (smoothed(join + 2 * h) - smoothed(join + h)) / h;
    expect(after / orificeFlowFunctionSlope(join)).toBeCloseTo(1, 3);
  });

  it("has a finite slope at one, falls all the way, and departs from the law by less than a quarter of its value at the join", () => {
    let before = smoothed(0.99);
    let worst = 0;
    for (let i = 1; i <= 1000; i++) {
      const r = 0.99 + 1e-5 * i;
      expect(smoothed(r)).toBeLessThan(before);
      before = smoothed(r);
      worst = Math.max(worst, Math.abs(smoothed(r) - orificeFlowFunction(r)));
    }
    expect(worst).toBeLessThan(0.25 * orificeFlowFunction(0.99));
    expect(smoothed(1)).toBe(0);
    expect(smoothed(1.2)).toBe(0);
    expect(smoothed(1 - 1e-9) / 1e-9).toBeLessThan(2 * (orificeFlowFunction(0.99) / 0.01));
  });
});
