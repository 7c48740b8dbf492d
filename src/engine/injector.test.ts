import { describe, expect, it } from "vitest";
import {
  fuelFlowOfPulses,
  injectedFuel,
  injectorDuty,
  injectorFlow,
  injectorPressureDifference,
  pulseWidthFor,
} from "./injector.ts";
import { deadTimeAt, deadTimeCurve } from "./injector-dead-time.ts";
import { powerCorrectionIso1585Compression } from "./power-correction.ts";

const PULSE = { pulseWidth: 3e-3, deadTime: 0.9e-3, staticMassFlow: 3e-3 };

describe("injector", () => {
  it("delivers nothing within its dead time and the rest in proportion", () => {
    expect(injectedFuel({ ...PULSE, pulseWidth: 0.9e-3 })).toBe(0);
    expect(injectedFuel({ ...PULSE, pulseWidth: 0.5e-3 })).toBe(0);
    expect(injectedFuel(PULSE)).toBeCloseTo(6.3e-6, 15);
  });

  it("finds the pulse for the fuel", () => {
    const fuel = injectedFuel(PULSE);
    expect(pulseWidthFor({ fuel, deadTime: 0.9e-3, staticMassFlow: 3e-3 })).toBeCloseTo(3e-3, 15);
    expect(pulseWidthFor({ fuel: 0, deadTime: 0.9e-3, staticMassFlow: 3e-3 })).toBe(0);
  });

  it("injects once a cycle: half the speed, times the cylinders", () => {
    const state = { ...PULSE, cylinders: 4, pulsesPerCycle: 1, engineSpeed: 50 };
    expect(fuelFlowOfPulses(state)).toBeCloseTo(injectedFuel(PULSE) * 100, 15);
    expect(injectorDuty({ pulseWidth: 20e-3, pulsesPerCycle: 1, engineSpeed: 100 })).toBeCloseTo(1, 12);
  });

  it("feels manifold vacuum only with a regulator that stands on the ambient", () => {
    const at = { regulatedPressure: 300_000, manifoldPressure: 35_000, ambientPressure: 100_000 };
    expect(injectorPressureDifference({ ...at, reference: "manifold" })).toBe(300_000);
    expect(injectorPressureDifference({ ...at, reference: "ambient" })).toBe(365_000);
    const ratio = injectorFlow({ referenceFlow: 1, referencePressureDifference: 300_000, pressureDifference: 365_000 });
    expect(ratio).toBeCloseTo(Math.sqrt(365 / 300), 14);
  });

  it("opens later at a low battery, and holds the ends of its dead-time curve with a word", () => {
    const curve = deadTimeCurve([
      [14, 0.9e-3],
      [9, 1.9e-3],
      [12, 1.2e-3],
    ]);
    expect(deadTimeAt(curve, 12).deadTime).toBeCloseTo(1.2e-3, 12);
    expect(deadTimeAt(curve, 10.5).deadTime).toBeGreaterThan(1.2e-3);
    expect(deadTimeAt(curve, 7)).toEqual({ deadTime: 1.9e-3, inside: false });
    expect(() =>
      deadTimeCurve([
        [9, 1e-3],
        [14, 2e-3],
      ]),
    ).toThrow(/rises/);
  });
});

describe("power correction of a compression-ignition engine", () => {
  it("takes the engine factor between its limits and the turbocharged exponents", () => {
    const air = { dryPressure: 95_000, temperature: 308, charging: "turbocharged" } as const;
    expect(powerCorrectionIso1585Compression({ ...air, fuelPerLitreAndCycle: 30 }).engineFactor).toBe(0.3);
    expect(powerCorrectionIso1585Compression({ ...air, fuelPerLitreAndCycle: 70 }).engineFactor).toBe(1.2);
    const { airFactor } = powerCorrectionIso1585Compression({ ...air, fuelPerLitreAndCycle: 50 });
    expect(airFactor).toBeCloseTo((99 / 95) ** 0.7 * (308 / 298) ** 1.5, 12);
  });
});
