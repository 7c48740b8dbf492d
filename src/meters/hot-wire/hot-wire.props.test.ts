import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { collisNusselt, kingNusselt, kramersNusselt } from "../heat-loss.ts";
import { compensatedWireRatio } from "./ambient-compensation.ts";
import {
  constantCurrentFlow,
  constantCurrentVoltage,
  constantTemperatureFlow,
  constantTemperatureVoltage,
  constantVoltageCurrent,
  constantVoltageFlow,
  type KingLaw,
  massFlowOfConductance,
  wireConductance,
} from "./king-law.ts";
import { averagedBeforeLinearising, averagedSignalRatio, meanPower, rectifiedMean } from "./pulsation-means.ts";
import { geometricConductance, wireTemperatureRatio } from "./wire-air-temperature.ts";
import { cleanedFlow, fouledReadingRatio } from "./wire-fouling.ts";

const LAW: KingLaw = { still: 4e-4, slope: 3e-3, exponent: 0.5 };
const WIRE = { resistance: 3, temperatureCoefficient: 3.9e-3, referenceTemperature: 273.15 };
const flow = fc.double({ min: 1e-4, max: 0.3, noNaN: true });
const airTemperature = fc.double({ min: 250, max: 340, noNaN: true });

describe("king law", () => {
  it("gives the flow back from every way to drive the wire", () => {
    fc.assert(
      fc.property(flow, airTemperature, (massFlow, t) => {
        const drive = { seriesResistance: 10, overheat: 130 };
        const voltage = constantTemperatureVoltage(LAW, drive, massFlow);
        expect(constantTemperatureFlow(LAW, drive, voltage).massFlow / massFlow).toBeCloseTo(1, 9);

        const current = 0.15;
        const across = constantCurrentVoltage(LAW, WIRE, { current, airTemperature: t, massFlow });
        if (across !== null) {
          const back = constantCurrentFlow(LAW, WIRE, { current, airTemperature: t, voltage: across });
          expect(back.massFlow / massFlow).toBeCloseTo(1, 6);
        }

        const through = constantVoltageCurrent(LAW, WIRE, { voltage: 1.2, airTemperature: t, massFlow });
        const back = constantVoltageFlow(LAW, WIRE, { voltage: 1.2, airTemperature: t, current: through });
        expect(back.massFlow / massFlow).toBeCloseTo(1, 6);
      }),
    );
  });

  it("does not know the direction", () => {
    expect(wireConductance(LAW, -0.02)).toBe(wireConductance(LAW, 0.02));
  });

  it("rises with flow at constant temperature, falls over the wire at constant current", () => {
    fc.assert(
      fc.property(flow, (m) => {
        const drive = { seriesResistance: 10, overheat: 130 };
        expect(constantTemperatureVoltage(LAW, drive, m * 1.01)).toBeGreaterThan(
          constantTemperatureVoltage(LAW, drive, m),
        );
        const at = { current: 0.15, airTemperature: 293, massFlow: m };
        const cool = constantCurrentVoltage(LAW, WIRE, { ...at, massFlow: m * 1.01 })!;
        expect(cool).toBeLessThan(constantCurrentVoltage(LAW, WIRE, at)!);
      }),
    );
  });

  it("burns at a current that the air cannot carry off, and reads zero below its conductance at rest", () => {
    expect(constantCurrentVoltage(LAW, WIRE, { current: 0.5, airTemperature: 293, massFlow: 0 })).toBeNull();
    expect(massFlowOfConductance(LAW, LAW.still / 2)).toEqual({ massFlow: 0, inside: false });
    expect(massFlowOfConductance(LAW, LAW.still)).toEqual({ massFlow: 0, inside: true });
  });
});

describe("pulsation", () => {
  it("averaged before linearising agrees with quadrature, at the edge of reversal too", () => {
    for (const amplitude of [0, 0.3, 0.9, 0.999, 1]) {
      for (const exponent of [0.225, 0.45, 0.5, 1]) {
        const read = averagedSignalRatio(
          amplitude,
          (u) => u ** exponent,
          (s) => s ** (1 / exponent),
          65_536,
        );
        expect(averagedBeforeLinearising(amplitude, exponent)).toBeCloseTo(read, amplitude === 1 ? 4 : 8);
      }
    }
  });

  it("under-reads before reversal, more the larger the amplitude; nothing is lost with a linear sensor", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.98, noNaN: true }),
        fc.double({ min: 0.2, max: 0.9, noNaN: true }),
        (b, n) => {
          expect(averagedBeforeLinearising(b, n)).toBeLessThan(1);
          expect(averagedBeforeLinearising(b + 0.01, n)).toBeLessThan(averagedBeforeLinearising(b, n));
          expect(meanPower(b, 1)).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  it("over-reads after reversal, without a step at its onset", () => {
    expect(rectifiedMean(1)).toBe(1);
    expect(rectifiedMean(1 + 1e-8)).toBeCloseTo(1, 6);
    fc.assert(
      fc.property(fc.double({ min: 1.01, max: 20, noNaN: true }), (b) => {
        expect(rectifiedMean(b)).toBeGreaterThan(1);
        expect(rectifiedMean(b * 1.01)).toBeGreaterThan(rectifiedMean(b));
      }),
    );
    expect(rectifiedMean(1e6) / 1e6).toBeCloseTo(2 / Math.PI, 5);
  });
});

describe("fouling", () => {
  it("by a pure insulator reads low throughout, more at high flow once the stream takes more heat than still air", () => {
    fc.assert(
      fc.property(flow, (m) => {
        const fouling = { resistance: 30, surfaceRatio: 1 };
        expect(fouledReadingRatio(LAW, fouling, m)).toBeLessThan(1);
        if (m < (LAW.still / LAW.slope) ** 2) return;
        expect(fouledReadingRatio(LAW, fouling, m * 1.2)).toBeLessThan(fouledReadingRatio(LAW, fouling, m) + 1e-12);
      }),
    );
  });

  it("with more surface can read high at idle and low at high flow", () => {
    const fouling = { resistance: 60, surfaceRatio: 1.06 };
    expect(fouledReadingRatio(LAW, fouling, 0.003)).toBeGreaterThan(1);
    expect(fouledReadingRatio(LAW, fouling, 0.2)).toBeLessThan(1);
  });

  it("is undone where the true flow is asked for a reading, and clean wires are left alone", () => {
    fc.assert(
      fc.property(flow, (m) => {
        const fouling = { resistance: 40, surfaceRatio: 1.1 };
        const reading = fouledReadingRatio(LAW, fouling, m) * m;
        expect(cleanedFlow(LAW, fouling, reading)! / m).toBeCloseTo(1, 8);
        expect(fouledReadingRatio(LAW, { resistance: 0, surfaceRatio: 1 }, m)).toBeCloseTo(1, 10);
      }),
    );
    expect(cleanedFlow(LAW, { resistance: 1e5, surfaceRatio: 1 }, 0.1)).toBeNull();
    expect(cleanedFlow(LAW, { resistance: 0, surfaceRatio: 2 }, 0.0001)).toBeNull();
  });
});

describe("ambient compensation", () => {
  const at = { massFlow: 0.03, overheat: 120, airTemperature: 333.15, calibrationTemperature: 293.15 };

  it("whole leaves nothing of the air's temperature, none reads a warm stream low by its share of the overheat", () => {
    expect(compensatedWireRatio(LAW, { ...at, compensation: 1 })).toBeCloseTo(1, 12);
    // without a conductance at rest G' = G (1 - 40/120) is (2/3)^(1/n) of the flow
    const bare = { ...LAW, still: 0 };
    expect(compensatedWireRatio(bare, { ...at, compensation: 0 })).toBeCloseTo((2 / 3) ** 2, 12);
    expect(compensatedWireRatio(LAW, { ...at, compensation: 0 })).toBeLessThan((2 / 3) ** 2);
  });

  it("in part lies between, beyond the whole it turns over, and at calibration it does not matter", () => {
    const ratio = (compensation: number) => compensatedWireRatio(LAW, { ...at, compensation });
    const rising = [0, 0.5, 0.9, 1, 1.1].map(ratio);
    expect(rising).toEqual([...rising].sort((a, b) => a - b));
    expect(ratio(1.1)).toBeGreaterThan(1);
    expect(compensatedWireRatio(LAW, { ...at, compensation: 0.3, airTemperature: 293.15 })).toBeCloseTo(1, 12);
    expect(() => compensatedWireRatio(LAW, { ...at, compensation: 0, airTemperature: 420 })).toThrow(/overheat/);
  });

  it("agrees with the bridge's own voltage, read off the curve of calibration", () => {
    const [seriesResistance, massFlow] = [10, 0.03];
    const warm = constantTemperatureVoltage(LAW, { seriesResistance, overheat: 120 - 0.4 * 40 }, massFlow);
    const read = constantTemperatureFlow(LAW, { seriesResistance, overheat: 120 }, warm).massFlow;
    expect(compensatedWireRatio(LAW, { ...at, compensation: 0.6 })).toBeCloseTo(read / massFlow, 12);
  });
});

describe("residual air temperature", () => {
  const wire = { diameter: 70e-6, length: 0.02, tubeArea: 3.8e-3, overheat: 130 };
  it("is none at calibration, rises with the air's temperature and does not know the direction", () => {
    const at = { massFlow: 0.03, calibrationTemperature: 293.15 };
    expect(wireTemperatureRatio(wire, { ...at, airTemperature: 293.15 })).toBeCloseTo(1, 12);
    expect(wireTemperatureRatio(wire, { ...at, airTemperature: 313.15 })).toBeGreaterThan(1);
    expect(wireTemperatureRatio(wire, { ...at, airTemperature: 263.15 })).toBeLessThan(1);
    expect(geometricConductance(wire, -0.03, 300)).toBe(geometricConductance(wire, 0.03, 300));
  });
});

describe("validity", () => {
  it("of the correlations ends where their authors' does, on either side", () => {
    expect([0.005, 0.02, 9000, 11_000].map((re) => kramersNusselt(re, 0.71).inside)).toEqual([
      false,
      true,
      true,
      false,
    ]);
    expect([0.01, 0.03, 139, 141].map((re) => collisNusselt(re).inside)).toEqual([false, true, true, false]);
    expect([0.1, 0.12].map((re) => kingNusselt(re, 0.71).inside)).toEqual([false, true]);
  });

  it("of the mean before reversal ends at reversal", () => {
    expect(meanPower(1, 0.5)).toBeLessThan(1);
    expect(() => meanPower(1.01, 0.5)).toThrow(/amplitude/);
    expect(() => meanPower(0.5, 1.01)).toThrow(/exponent/);
  });
});
