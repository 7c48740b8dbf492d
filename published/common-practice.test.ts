/**
 * What the trade knows without a source: rules of thumb, held to the width in which they are told. They show that a law points the
 * right way and has the right size; none is asserted tightly.
 */
import { describe, expect, it } from "vitest";
import { absoluteLoad, airFromFuel, speedDensityFlow, stoichiometricAirFuelRatio } from "../src/engine/index.ts";
import { standardAtmosphere } from "../src/gas/index.ts";
import {
  compensationRatio,
  constantTemperatureFlow,
  constantTemperatureVoltage,
  filmSignal,
  fouledReadingRatio,
  preparePressureSensor,
  pressureOfVoltage,
  vaneTorqueErrorRatio,
  voltageOfPressure,
  wireConductance,
} from "../src/meters/index.ts";
import { record } from "./check-records.ts";
import { expectFailure, expectInside } from "./matched-digits.ts";

/** The two numbers of a range as the record tells it: "about 11..12 kPa per 1000 m". */
function toldRange(id: string, index = 0): readonly [number, number] {
  const ranges = [...String(record("12-trade-facts", id).expected).matchAll(/(\d+(?:\.\d+)?)\.\.(\d+(?:\.\d+)?)/g)];
  const [, low, high] = ranges[index] ?? [];
  return [Number(low), Number(high)];
}

const says = (id: string, words: RegExp): void => expect(String(record("12-trade-facts", id).expected)).toMatch(words);

const SEA = { ...standardAtmosphere(0), humidityRatio: 0 };
const HIGH = { ...standardAtmosphere(2000), humidityRatio: 0 };
const KING = { still: 0.002, slope: 0.02, exponent: 0.45 };

describe("weather", () => {
  it("takes 11 to 12 kPa off the barometer in the first kilometre", () => {
    const drop = (standardAtmosphere(0).pressure - standardAtmosphere(1000).pressure) / 1000;
    expectInside(drop, toldRange("trade.baro.alt"));
    expectFailure(() => expectInside(drop * 1.06, toldRange("trade.baro.alt")));
  });

  it("needs no correction in a meter of mass, the root of density in a vane, all of density in a vortex meter", () => {
    const ratio = (kind: "vane" | "vortex" | "hot-wire" | "hot-film") =>
      compensationRatio({ kind, compensation: "none", air: HIGH, calibration: SEA });
    const density = SEA.density / HIGH.density;
    expect(ratio("hot-wire")).toBe(1);
    expect(ratio("hot-film")).toBe(1);
    expect(ratio("vane")).toBeCloseTo(Math.sqrt(density), 12);
    expect(ratio("vortex")).toBeCloseTo(density, 12);
  });
});

describe("mounting and dirt", () => {
  it("a vane reads right only level: a flap that helps its spring reads low, one that hangs open reads high", () => {
    says("trade.vane.level", /attitude/);
    const tilted = (torqueError: number) => vaneTorqueErrorRatio({ opening: 0.3, torqueError });
    expect(tilted(0)).toBe(1);
    expect(tilted(0.05)).toBeLessThan(0.98);
    expect(tilted(-0.05)).toBeGreaterThan(1.02);
  });

  it("a dirty wire that is thicker too reads high at idle and low at high flow; a pure insulator low everywhere", () => {
    says("trade.hotwire.dirt", /over-reads at idle .* under-reads at high flow/);
    const grown = { resistance: 20, surfaceRatio: 1.2 };
    expect(fouledReadingRatio(KING, grown, 0.003)).toBeGreaterThan(1.02);
    expect(fouledReadingRatio(KING, grown, 0.15)).toBeLessThan(0.98);
    for (const flow of [0.003, 0.02, 0.15])
      expect(fouledReadingRatio(KING, { resistance: 20, surfaceRatio: 1 }, flow)).toBeLessThan(1);
  });

  it("a film sees reversal, a wire does not", () => {
    const film = { scaleFlow: 0.05, leak: 0.5 };
    expect(filmSignal(film, -0.01)).toBe(-filmSignal(film, 0.01));
    expect(wireConductance(KING, -0.01)).toBe(wireConductance(KING, 0.01));
  });
});

describe("key on, engine off", () => {
  it("a pressure sensor reads the barometer, an absolute and a gauge one alike", () => {
    says("trade.koeo.map", /equals barometric pressure/);
    for (const reads of ["absolute", "gauge"] as const) {
      const [empty, full] = reads === "absolute" ? [20_000, 115_000] : [-90_000, 10_000];
      const points = [[0.5, empty] as const, [4.5, full] as const];
      const sensor = preparePressureSensor({ points, reads, reference: 5 });
      if (!sensor.ok) throw new Error(sensor.message);
      const ambientPressure = 96_500;
      const voltage = voltageOfPressure(sensor.value, { pressure: ambientPressure, ambientPressure });
      expect(pressureOfVoltage(sensor.value, { voltage, ambientPressure }).pressure).toBeCloseTo(ambientPressure, 6);
      if (reads === "gauge") expect(voltage).toBeCloseTo(4.1, 9);
    }
  });

  it("a wire gives its voltage at rest, which reads as no flow", () => {
    says("trade.maf.koeo", /^0 g\/s/);
    const drive = { seriesResistance: 2, overheat: 130 };
    const rest = constantTemperatureVoltage(KING, drive, 0);
    expectInside(rest, toldRange("trade.maf.koeo"));
    expect(constantTemperatureFlow(KING, drive, rest).massFlow).toBeCloseTo(0, 12);
  });
});

describe("sizes", () => {
  it("an unloaded idle draws the told air for a litre at the lower told pressure, a loaded one at the upper draws more", () => {
    const [low, high] = toldRange("trade.idle.map");
    const airOfLitre = (pressure: number): number => {
      const state = { manifoldPressure: 1000 * pressure, displacement: 1e-3, engineSpeed: 750 / 60 };
      return 1000 * speedDensityFlow({ ...state, chargeTemperature: 315, volumetricEfficiency: 0.75 });
    };
    expectInside(airOfLitre(low), toldRange("trade.idle.maf"));
    expectFailure(() => expectInside(airOfLitre(high), toldRange("trade.idle.maf")));
  });

  it("an engine at full load draws the told air for a horsepower", () => {
    // 0.45 to 0.5 lb of fuel a horsepower and hour at lambda 0.86
    for (const pounds of [0.45, 0.5]) {
      const fuelFlow = (pounds * 0.45359237) / 3600;
      const air = airFromFuel({
        fuelFlow,
        lambda: 0.86,
        stoichiometricAirFuelRatio: stoichiometricAirFuelRatio("petrol"),
      });
      expectInside(1000 * air, toldRange("trade.wot.maf"));
    }
  });

  it("a boosted engine's absolute load goes beyond 100 %", () => {
    const [low, high] = toldRange("trade.ve.turbo");
    const state = { manifoldPressure: 200_000, displacement: 2e-3, engineSpeed: 60, chargeTemperature: 325 };
    const massFlow = speedDensityFlow({ ...state, volumetricEfficiency: 0.95 });
    expectInside(100 * absoluteLoad({ massFlow, displacement: 2e-3, engineSpeed: 60 }), [low, high]);
  });
});
