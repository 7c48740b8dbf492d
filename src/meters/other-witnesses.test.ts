import { describe, expect, it } from "vitest";
import { exhaustSideAir, exhaustSideGas } from "./exhaust/exhaust-side-air.ts";
import { fuelSideAir, fuelSidePulseWidth } from "./fuel-side/fuel-side-air.ts";
import { preparePressureSensor } from "./manifold-pressure/pressure-sensor.ts";
import { pressureSideAir, pressureSideVoltage } from "./manifold-pressure/pressure-side-air.ts";
import { meterFacts } from "./meter-facts.ts";
import { otherTubeFactor } from "./other-tube.ts";
import { readingBudget, relativeSensitivities } from "./reading-budget.ts";
import { throttleAngleOf, throttleMassFlow } from "./throttle/throttle-flow.ts";

const KINDS = [
  "vane",
  "vortex",
  "hot-wire",
  "hot-film",
  "manifold-pressure",
  "throttle",
  "fuel-side",
  "exhaust",
] as const;

const fuelState = {
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
const petrol = {
  fuelAtoms: { hydrogenPerCarbon: 1.87, oxygenPerCarbon: 0 },
  fuelFlow: 1e-3,
  stoichiometricAirFuelRatio: 14.6,
};

describe("fuel side", () => {
  const reading = { ...fuelState, pulseWidth: 3.4e-3 };

  it("tells the air that the fuel was for, and the pulse back", () => {
    const air = fuelSideAir(reading);
    expect(air).toBeCloseTo(14.6 * 745 * 4e-6 * 2.5e-3 * 50, 12);
    expect(fuelSidePulseWidth(air, fuelState)).toBeCloseTo(3.4e-3, 14);
  });

  it("feels lambda in proportion, pressure by its root, and the dead time the more the shorter the pulse", () => {
    const s = relativeSensitivities(fuelSideAir, reading);
    expect(s.lambda).toBeCloseTo(1, 8);
    expect(s.pressureDifference).toBeCloseTo(0.5, 8);
    expect(s.pulseWidth).toBeCloseTo(3.4 / 2.5, 7);
    expect(s.deadTime).toBeCloseTo(-0.9 / 2.5, 7);
    const idle = relativeSensitivities(fuelSideAir, { ...reading, pulseWidth: 1.8e-3 });
    expect(idle.deadTime).toBeCloseTo(-1, 7);
  });

  it("has a budget in which a dead time known to a tenth of a millisecond is four per cent", () => {
    const budget = readingBudget(fuelSideAir, reading, { deadTime: 1e-4, lambda: 0.01 });
    expect(budget.standardUncertainty / budget.value).toBeCloseTo(Math.hypot(0.04, 0.01), 6);
    expect(budget.lines[0]!.name).toBe("deadTime");
  });
});

describe("exhaust side", () => {
  const none = { nitricOxide: 0, hydrocarbons: 0, carbonPerHydrocarbon: 6 };

  it("tells the air from the gas and the fuel, and the gas back, lean and rich", () => {
    for (const lambda of [0.8, 0.95, 1, 1.2, 2]) {
      const massFlow = lambda * 14.6e-3;
      const gas = exhaustSideGas(massFlow, petrol);
      const told = exhaustSideAir({ ...petrol, gas: { ...none, ...gas } });
      expect(told.lambda).toBeCloseTo(lambda, 10);
      expect(told.massFlow).toBeCloseTo(massFlow, 12);
    }
  });

  it("feels fuel in proportion, and oxygen by a twentieth for a per cent of gas", () => {
    const gas = exhaustSideGas(14.6e-3, petrol);
    const air = ({ oxygen, fuelFlow }: { readonly oxygen: number; readonly fuelFlow: number }) =>
      exhaustSideAir({ ...petrol, fuelFlow, gas: { ...none, ...gas, oxygen } }).massFlow;
    const reading = { oxygen: 0.01, fuelFlow: 1e-3 };
    expect(relativeSensitivities(air, reading).fuelFlow).toBeCloseTo(1, 8);
    const budget = readingBudget(air, reading, { oxygen: 0.001, fuelFlow: 1e-5 });
    // one per cent of oxygen is 1/(1.4675 * 0.15) of the air at stoichiometry: 4.5 %
    expect(budget.lines.find((l) => l.name === "oxygen")!.contribution / budget.value).toBeCloseTo(0.0043, 3);
  });
});

describe("pressure side", () => {
  const result = preparePressureSensor({
    points: [
      [0.5, 20_000],
      [4.5, 115_000],
    ],
    reads: "absolute",
    reference: 5,
  });
  if (!result.ok) throw new Error(result.message);
  const sensor = result.value;
  const state = {
    ambientPressure: 98_000,
    displacement: 0.002,
    engineSpeed: 25,
    chargeTemperature: 320,
    volumetricEfficiency: 0.85,
  };
  const air = (reading: typeof state & { readonly voltage: number; readonly groundShift: number }) =>
    pressureSideAir(sensor, reading).massFlow;

  it("goes from voltage to air and back", () => {
    for (const voltage of [0.6, 1.5, 3.9]) {
      const { massFlow, inside } = pressureSideAir(sensor, { ...state, voltage });
      expect(inside).toBe(true);
      expect(pressureSideVoltage(sensor, massFlow, state)).toBeCloseTo(voltage, 10);
    }
    expect(pressureSideAir(sensor, { ...state, voltage: 2.5 }).massFlow).toBeCloseTo(
      (0.85 * 67_500 * 0.002 * 25) / 2 / (287.0475 * 320),
      9,
    );
    expect(pressureSideAir(sensor, { ...state, voltage: -1 })).toMatchObject({ massFlow: 0, inside: false });
  });

  it("feels efficiency and speed in proportion, temperature against it, and a ground shift most at low pressure", () => {
    const reading = { ...state, voltage: 1, groundShift: 0 };
    const s = relativeSensitivities(air, reading);
    expect(s.volumetricEfficiency).toBeCloseTo(1, 8);
    expect(s.engineSpeed).toBeCloseTo(1, 8);
    expect(s.chargeTemperature).toBeCloseTo(-1, 8);
    expect(s.ambientPressure).toBe(0);
    const shifted = (voltage: number) => {
      const budget = readingBudget(air, { ...reading, voltage }, { groundShift: 0.02 });
      return budget.standardUncertainty / budget.value;
    };
    // 23.75 kPa a volt; the shift is taken from the voltage and from the supply
    expect(shifted(1)).toBeCloseTo((23_750 * 0.02 * (1 - 1 / 5)) / 31_875, 4);
    expect(shifted(4)).toBeLessThan(shifted(1) / 4);
  });
});

describe("throttle", () => {
  const throttle = { bore: 0.06, shaft: 0.008, closedAngle: 0.1, dischargeCoefficient: 0.8, bypassArea: 6e-6 };
  const state = { upstreamPressure: 98_000, upstreamTemperature: 300, downstreamPressure: 40_000 };

  it("goes from angle to air and back, and is closed where leakage carries the flow", () => {
    for (const angle of [0.15, 0.4, 1.1]) {
      const { massFlow } = throttleMassFlow(throttle, angle, state);
      expect(throttleAngleOf(throttle, massFlow, state)).toBeCloseTo(angle, 9);
    }
    expect(throttleAngleOf(throttle, throttleMassFlow(throttle, 0.05, state).massFlow / 2, state)).toBe(0.1);
    expect(throttleAngleOf(throttle, 10, state)).toBeNull();
  });

  it("choked feels the pressure before it alone, and ever more of the pressure behind it as it opens", () => {
    const air = ({ angle, ...at }: typeof state & { readonly angle: number }) =>
      throttleMassFlow(throttle, angle, at).massFlow;
    const choked = relativeSensitivities(air, { ...state, angle: 0.4 });
    expect(choked.upstreamPressure).toBeCloseTo(1, 8);
    expect(choked.upstreamTemperature).toBeCloseTo(-0.5, 8);
    expect(choked.downstreamPressure).toBe(0);
    const open = [0.8, 0.9, 0.95].map(
      (ratio) =>
        relativeSensitivities(air, { ...state, angle: 0.4, downstreamPressure: ratio * 98_000 }).downstreamPressure,
    );
    expect(open[0]).toBeLessThan(-1);
    expect(open[2]! / open[0]!).toBeGreaterThan(4);
    const budget = readingBudget(air, { ...state, angle: 0.2 }, { angle: 0.005 });
    expect(budget.standardUncertainty / budget.value).toBeGreaterThan(0.04);
  });
});

describe("every kind of meter and witness", () => {
  it("same element in another tube reads by the area and the profile", () => {
    expect(otherTubeFactor({ oldBore: 0.06, newBore: 0.072 })).toBeCloseTo(1.44, 12);
    expect(otherTubeFactor({ oldBore: 0.06, newBore: 0.06, oldProfile: 1.2, newProfile: 1 })).toBeCloseTo(1.2, 12);
  });

  it("says what it senses, is blind to, what weather, mounting and supply do, how it answers and how it fails", () => {
    for (const kind of KINDS) {
      const facts = meterFacts(kind);
      for (const text of [facts.senses, facts.weather, facts.response]) expect(text.length, kind).toBeGreaterThan(5);
      expect(facts.orientation).not.toBe("");
      expect(facts.supply).not.toBe("");
      expect(facts.blindTo.length).toBeGreaterThan(1);
      expect(facts.fails.length).toBeGreaterThan(2);
    }
  });
});
