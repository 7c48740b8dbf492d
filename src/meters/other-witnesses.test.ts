import { describe, expect, it } from "vitest";
import type { MeterKind } from "../engine/index.ts";
import { exhaustSideAir } from "./exhaust/exhaust-side-air.ts";
import { fuelSideAir, fuelSidePulseWidth } from "./fuel-side/fuel-side-air.ts";
import { meterFacts } from "./meter-facts.ts";
import { otherTubeFactor } from "./other-tube.ts";

const KINDS: readonly MeterKind[] = ["vane", "vortex", "hot-wire", "hot-film"];

describe("other witnesses", () => {
  it("same element in another tube reads by the area and the profile", () => {
    expect(otherTubeFactor({ oldBore: 0.06, newBore: 0.072 })).toBeCloseTo(1.44, 12);
    expect(otherTubeFactor({ oldBore: 0.06, newBore: 0.06, oldProfile: 1.2, newProfile: 1 })).toBeCloseTo(1.2, 12);
  });

  it("fuel side and exhaust side tell the air that the fuel was for, and the pulse back", () => {
    const reading = {
      deadTime: 0.9e-3,
      pulsesPerCycle: 1,
      cylinders: 4,
      engineSpeed: 25,
      referenceFlow: 4e-6,
      referencePressureDifference: 300_000,
      pressureDifference: 300_000,
      fuelDensity: 745,
      lambda: 1,
      stoichiometricAirFuelRatio: 14.6,
    };
    const air = fuelSideAir({ ...reading, pulseWidth: 3.4e-3 });
    expect(air).toBeCloseTo(14.6 * 745 * 4e-6 * 2.5e-3 * 50, 12);
    expect(fuelSidePulseWidth(air, reading)).toBeCloseTo(3.4e-3, 14);
    const gas = {
      carbonDioxide: 0.153,
      carbonMonoxide: 0,
      oxygen: 0,
      nitricOxide: 0,
      hydrocarbons: 0,
      carbonPerHydrocarbon: 6,
    };
    const exhaust = exhaustSideAir({
      gas,
      fuelAtoms: { hydrogenPerCarbon: 1.87, oxygenPerCarbon: 0 },
      fuelFlow: air / 14.6,
      stoichiometricAirFuelRatio: 14.6,
    });
    expect(exhaust.lambda).toBeCloseTo(1, 12);
    expect(exhaust.massFlow).toBeCloseTo(air, 12);
  });

  it("every kind says what it senses, is blind to and how it fails", () => {
    for (const kind of KINDS) {
      const facts = meterFacts(kind);
      expect(facts.senses.length).toBeGreaterThan(10);
      expect(facts.blindTo.length).toBeGreaterThan(1);
      expect(facts.fails.length).toBeGreaterThan(2);
    }
  });
});
