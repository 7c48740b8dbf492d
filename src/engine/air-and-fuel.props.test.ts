import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chargeHeatingShare, chargeTemperature, DEFAULT_CHARGE_HEATING } from "./charge-temperature.ts";
import { absoluteLoad, calculatedLoad, massFlowOfAbsoluteLoad, massFlowOfCalculatedLoad } from "./engine-load.ts";
import { idealExhaust } from "./exhaust-composition.ts";
import { combustionWaterPerDryGas, exhaustLambda, toDryBasis, toWetBasis } from "./exhaust-lambda.ts";
import {
  airFuelRatioOfComposition,
  blendProperties,
  fuelProperties,
  stoichiometricAirFuelRatio,
} from "./fuel-properties.ts";
import { airFromFuel, combineTrims, fuelForAir, fuelSideFactor } from "./fuel-side.ts";
import { fuelVapourDisplacement } from "./fuel-vapour-displacement.ts";
import { residualGasFactor, residualGasFraction } from "./residual-gas.ts";
import { speedDensityFlow, volumetricEfficiencyOf } from "./speed-density.ts";

const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("speed density", () => {
  it("is undone by the volumetric efficiency", () => {
    fc.assert(
      fc.property(
        positive(15_000, 250_000),
        positive(5, 120),
        positive(250, 400),
        positive(0.2, 1.3),
        (p, n, t, eta) => {
          const state = { manifoldPressure: p, displacement: 0.002, engineSpeed: n, chargeTemperature: t };
          const massFlow = speedDensityFlow({ ...state, volumetricEfficiency: eta });
          expect(volumetricEfficiencyOf({ ...state, massFlow })).toBeCloseTo(eta, 12);
        },
      ),
    );
  });

  it("draws nothing from an empty manifold or at rest, and refuses to tell an efficiency there", () => {
    const state = { manifoldPressure: 0, displacement: 0.002, engineSpeed: 0, chargeTemperature: 300 };
    expect(speedDensityFlow({ ...state, volumetricEfficiency: 0.8 })).toBe(0);
    expect(() => volumetricEfficiencyOf({ ...state, massFlow: 0 })).toThrow(/engine speed/);
    expect(() => speedDensityFlow({ ...state, chargeTemperature: 0, volumetricEfficiency: 1 })).toThrow(/temperature/);
  });
});

describe("residual gas", () => {
  it("leaves more room for charge the lower the exhaust pressure, in a straight line, and one at equal pressures", () => {
    fc.assert(
      fc.property(positive(0.2, 6), positive(8, 20), (ratio, r) => {
        const f = (x: number) => residualGasFactor({ exhaustOverIntakePressure: x, compressionRatio: r });
        expect(f(1)).toBeCloseTo(1, 12);
        expect(f(ratio + 0.1)).toBeLessThan(f(ratio));
        expect(f(ratio) - f(ratio + 0.1)).toBeCloseTo(0.1 / (1.3 * (r - 1)), 10);
      }),
    );
  });

  it("makes up a few per cent at full load and a fifth or so at idle", () => {
    const state = { compressionRatio: 10, chargeTemperature: 330, residualTemperature: 1100 };
    const full = residualGasFraction({ ...state, exhaustOverIntakePressure: 1.05 });
    const idle = residualGasFraction({ ...state, exhaustOverIntakePressure: 3.3 });
    expect(full).toBeGreaterThan(0.02);
    expect(full).toBeLessThan(0.06);
    expect(idle).toBeGreaterThan(0.08);
    expect(idle).toBeLessThan(0.25);
  });

  it("at equal pressures leaves what fills the clearance volume, by the ratio of temperatures", () => {
    for (const compressionRatio of [8, 10, 18]) {
      const state = {
        exhaustOverIntakePressure: 1,
        compressionRatio,
        chargeTemperature: 320,
        residualTemperature: 1100,
      };
      const ratio = 320 / (1100 * (compressionRatio - 1));
      expect(residualGasFraction(state)).toBeCloseTo(ratio / (1 + ratio), 14);
      // twice the pressure in the exhaust: twice the gas left, to less fresh charge
      const double = (2 * ratio) / residualGasFactor({ exhaustOverIntakePressure: 2, compressionRatio });
      const left = residualGasFraction({ ...state, exhaustOverIntakePressure: 2 });
      expect(left).toBeCloseTo(double / (1 + double), 14);
    }
  });
});

describe("charge temperature", () => {
  it("lies between air and coolant, nearer to the air the larger the flow", () => {
    fc.assert(
      fc.property(positive(250, 330), positive(300, 380), positive(1e-4, 0.3), (air, coolant, flow) => {
        const t = chargeTemperature({ intakeTemperature: air, coolantTemperature: coolant, massFlow: flow });
        expect(t).toBeGreaterThanOrEqual(Math.min(air, coolant) - 1e-9);
        expect(t).toBeLessThanOrEqual(Math.max(air, coolant) + 1e-9);
        expect(chargeHeatingShare(flow * 1.5)).toBeLessThan(chargeHeatingShare(flow));
      }),
    );
  });

  it("takes the stated share at the stated flow, all of it at rest, none where there is no heating", () => {
    expect(chargeHeatingShare(DEFAULT_CHARGE_HEATING.referenceFlow)).toBeCloseTo(DEFAULT_CHARGE_HEATING.share, 12);
    expect(chargeHeatingShare(0)).toBe(1);
    expect(chargeHeatingShare(0.01, { share: 0, referenceFlow: 0.01, exponent: 0.4 })).toBe(0);
  });
});

describe("fuels", () => {
  it("blend between their parts, and are the parts at the ends", () => {
    const petrol = stoichiometricAirFuelRatio("petrol");
    const ethanol = stoichiometricAirFuelRatio("ethanol");
    fc.assert(
      fc.property(positive(0.01, 0.99), (share) => {
        const blend = blendProperties({ petrol: 1 - share, ethanol: share });
        expect(blend.stoichiometricAirFuelRatio).toBeLessThan(petrol);
        expect(blend.stoichiometricAirFuelRatio).toBeGreaterThan(ethanol);
        // known by its ratio alone, the blend is found again
        const again = fuelProperties({ stoichiometricAirFuelRatio: blend.stoichiometricAirFuelRatio });
        expect(again.molarMass).toBeCloseTo(blend.molarMass, 10);
        expect(again.density).toBeCloseTo(blend.density, 6);
      }),
    );
    expect(blendProperties({ petrol: 2 })).toEqual(fuelProperties("petrol"));
  });

  it("known by a ratio above petrol or below ethanol keep that ratio", () => {
    const rich = fuelProperties({ stoichiometricAirFuelRatio: 15.2 });
    expect(rich.stoichiometricAirFuelRatio).toBe(15.2);
    expect(rich.molarMass).toBeCloseTo(0.105, 12);
    expect(fuelProperties({ stoichiometricAirFuelRatio: 6.5 }).molarMass).toBeCloseTo(0.032, 3);
    expect(stoichiometricAirFuelRatio({ stoichiometricAirFuelRatio: 14.4 })).toBe(14.4);
  });

  it("need less air the more oxygen they bring", () => {
    expect(airFuelRatioOfComposition(3, 0.5)).toBeLessThan(airFuelRatioOfComposition(3, 0));
    expect(() => airFuelRatioOfComposition(0, 2)).toThrow(/oxygen demand/);
    expect(() => blendProperties({})).toThrow(/shares/);
  });

  it("displace air with vapour only where they evaporate in the port", () => {
    expect(fuelVapourDisplacement("petrol", "direct")).toBe(0);
    expect(fuelVapourDisplacement("diesel", "port")).toBe(0);
    expect(fuelVapourDisplacement("cng", "port")).toBeGreaterThan(fuelVapourDisplacement("lpg", "port"));
  });
});

describe("fuel side", () => {
  it("gives air from fuel and fuel from air", () => {
    fc.assert(
      fc.property(positive(1e-4, 0.02), positive(0.6, 2), (fuelFlow, lambda) => {
        const mixture = { lambda, stoichiometricAirFuelRatio: 14.6 };
        const airFlow = airFromFuel({ fuelFlow, ...mixture });
        expect(fuelForAir({ airFlow, ...mixture })).toBeCloseTo(fuelFlow, 15);
      }),
    );
  });

  it("counts trims once: one per cent and two make three added, 3.02 multiplied", () => {
    expect(combineTrims(0.01, 0.02, "added")).toBeCloseTo(0.03, 15);
    expect(combineTrims(0.01, 0.02, "multiplied")).toBeCloseTo(0.0302, 15);
  });

  it("finds as much more air as trim added fuel at the same mixture, or as the mixture leaned without trim", () => {
    expect(fuelSideFactor({ trim: 0.1, lambda: 1, lambdaCommanded: 1 })).toBeCloseTo(1.1, 15);
    expect(fuelSideFactor({ trim: 0, lambda: 0.99, lambdaCommanded: 0.9 })).toBeCloseTo(1.1, 15);
    expect(() => fuelSideFactor({ trim: -1, lambda: 1, lambdaCommanded: 1 })).toThrow(/trim/);
  });
});

describe("loads of SAE J1979", () => {
  it("are undone by their inverses", () => {
    fc.assert(
      fc.property(positive(1e-3, 0.3), positive(8, 120), (massFlow, engineSpeed) => {
        const load = absoluteLoad({ massFlow, displacement: 0.002, engineSpeed });
        expect(massFlowOfAbsoluteLoad({ absoluteLoad: load, displacement: 0.002, engineSpeed })).toBeCloseTo(
          massFlow,
          14,
        );
        const weather = { fullLoadFlow: 0.2, barometer: 95_000, ambientTemperature: 290 };
        const share = calculatedLoad({ massFlow, ...weather });
        expect(massFlowOfCalculatedLoad({ calculatedLoad: share, ...weather })).toBeCloseTo(massFlow, 14);
      }),
    );
  });
});

describe("exhaust gas", () => {
  const fuel = { hydrogenPerCarbon: 1.87, oxygenPerCarbon: 0.03 };

  it("gives the lambda back that it was made with", () => {
    fc.assert(
      fc.property(positive(0.75, 2), (lambda) => {
        const dry = idealExhaust(lambda, fuel, { basis: "dry", waterGasConstant: 3.5 });
        const gas = { ...dry, nitricOxide: 0, hydrocarbons: 0, carbonPerHydrocarbon: 6 };
        expect(exhaustLambda(gas, fuel)).toBeCloseTo(lambda, 9);
      }),
    );
  });

  it("sums to one, wet and dry, and holds no water when dry", () => {
    for (const basis of ["wet", "dry"] as const) {
      const parts = idealExhaust(0.9, fuel, { basis });
      expect(Object.values(parts).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 14);
      expect(parts.water > 0).toBe(basis === "wet");
    }
  });

  it("converts between bases and back", () => {
    const water = combustionWaterPerDryGas({ carbonDioxide: 0.15, carbonMonoxide: 0.002 }, fuel);
    expect(toDryBasis(toWetBasis(0.15, water), water)).toBeCloseTo(0.15, 15);
    expect(water).toBeGreaterThan(0.1);
  });

  it("refuses water beyond ten times the dry gas, and no gas is so wet", () => {
    expect(toDryBasis(0.01, 10)).toBeCloseTo(0.11, 12);
    for (const basis of [toDryBasis, toWetBasis]) expect(() => basis(0.01, 10.1)).toThrow(/water/);
  });

  it("reads leaner the less fuel is left unburnt", () => {
    const gas = {
      carbonDioxide: 0.14,
      carbonMonoxide: 0.005,
      oxygen: 0.01,
      nitricOxide: 0,
      hydrocarbons: 1e-4,
      carbonPerHydrocarbon: 6,
    };
    expect(exhaustLambda({ ...gas, hydrocarbons: 1e-3 }, fuel)).toBeLessThan(exhaustLambda(gas, fuel));
    expect(() => exhaustLambda({ ...gas, carbonDioxide: 0 }, fuel)).toThrow(/carbon dioxide/);
  });
});
