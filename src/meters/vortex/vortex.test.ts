import { describe, expect, it } from "vitest";
import { countingResolution, gateForResolution, timingResolution } from "./count-resolution.ts";
import { cylinderStrouhal, freeAreaShare } from "./strouhal.ts";
import { lockedFrequency, missedPulsesRatio } from "./vortex-faults.ts";
import { frequencyOfPeriod, lowestUsableVolumeFlow, vortexFrequency, vortexMassFlow } from "./vortex-law.ts";

describe("vortex law", () => {
  const meter = { pulsesPerVolume: 11_000 };

  it("gives the frequency back, and mass in proportion to density", () => {
    const mass = vortexMassFlow(meter, 800, 1.1);
    expect(vortexFrequency(meter, mass, 1.1)).toBeCloseTo(800, 10);
    expect(vortexMassFlow(meter, 800, 2.2)).toBeCloseTo(2 * mass, 15);
    expect(frequencyOfPeriod(2e-3)).toBeCloseTo(500, 12);
  });

  it("has a lowest usable flow that falls with viscosity", () => {
    const shape = { leastReynolds: 300, kinematicViscosity: 1.5e-5, bore: 0.06, bodyWidth: 0.015, freeArea: 0.685 };
    const least = lowestUsableVolumeFlow(shape);
    expect(least).toBeCloseTo((300 * 1.5e-5 * 0.685 * Math.PI * 0.06 ** 2) / (4 * 0.015), 12);
    expect(lowestUsableVolumeFlow({ ...shape, kinematicViscosity: 3e-5 })).toBeCloseTo(2 * least, 12);
  });
});

describe("Strouhal number", () => {
  it("is continuous over the transition range and marks what lies outside", () => {
    for (const re of [150, 300]) {
      expect(cylinderStrouhal(re - 1e-6).strouhal).toBeCloseTo(cylinderStrouhal(re + 1e-6).strouhal, 7);
    }
    expect(cylinderStrouhal(200).inside).toBe(true);
    expect(cylinderStrouhal(10)).toEqual({ strouhal: cylinderStrouhal(50).strouhal, inside: false });
  });

  it("goes with the short form of the free area to 1 % up to a width of 0.28 bores", () => {
    for (const x of [0.05, 0.15, 0.28]) expect(freeAreaShare(x) / (1 - 1.25 * x)).toBeCloseTo(1, 1);
    expect(freeAreaShare(0)).toBe(1);
    expect(freeAreaShare(1)).toBeCloseTo(0, 12);
  });
});

describe("resolution", () => {
  it("by counting is one pulse in the gate; by timing it is the clock's, and finer at low frequency", () => {
    expect(countingResolution(100, 0.5)).toBeCloseTo(0.02, 15);
    expect(gateForResolution(100, 0.02)).toBeCloseTo(0.5, 15);
    expect(timingResolution(100, 0.5, 1e-6)).toBeCloseTo(1e-4 / 50, 15);
    expect(timingResolution(1, 0.1, 1e-6)).toBeCloseTo(1e-6, 15);
  });
});

describe("faults", () => {
  it("read low in proportion to the pulses missed", () => {
    expect(missedPulsesRatio(0.1)).toBeCloseTo(0.9, 15);
  });

  it("lock to half of a strong pulsation that is near, and leave a distant or weak one alone", () => {
    const near = { sheddingFrequency: 100, pulsationFrequency: 210 };
    expect(lockedFrequency({ ...near, amplitude: 0.2 })).toEqual({ frequency: 105, locked: true });
    expect(lockedFrequency({ ...near, amplitude: 0.01 })).toEqual({ frequency: 100, locked: false });
    expect(lockedFrequency({ sheddingFrequency: 100, pulsationFrequency: 500, amplitude: 0.2 }).locked).toBe(false);
  });
});
