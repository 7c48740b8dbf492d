/**
 * Density of moist air over the whole range an engine meets: a mixture of gases with the second virial coefficient.
 *
 * Equation    rho = p (x_a M_a + x_w M_w) / (Z R T),   Z = 1 + B p/(R T)                                            (1)
 * Symbols     rho kg/m3 | p Pa | T K | x mole fraction | M kg/mol | B m3/mol see virial-coefficients.ts | R J/(mol K) | Z 1
 * Validity    200 to 475 K, up to 500 kPa (asserted); the third virial coefficient left out is worth 7e-5 at 500 kPa and 290 K
 * Assumes     humidity is given as the ratio w of water to dry air by mass
 * Deviation   from CIPM-2007 in its range below 5e-6 (tested)
 * Source      [hyland1983]
 * Check       published/picard2008.test.ts, published/ashrae2017.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";
import {
  AIR_WATER_MOLAR_RATIO,
  GAS_CONSTANT_DRY_AIR,
  MOLAR_GAS_CONSTANT,
  MOLAR_MASS_DRY_AIR,
  MOLAR_MASS_WATER,
} from "../quantities/index.ts";
import { waterMoleFraction } from "./humidity.ts";
import { moistAirVirial } from "./virial-coefficients.ts";

export type MoistAir = {
  /** Pa, absolute */
  readonly pressure: number;
  /** K */
  readonly temperature: number;
  /** kg water per kg dry air */
  readonly humidityRatio: number;
};

export const MOIST_AIR_RANGE = { temperature: { low: 200, high: 475 }, pressure: { low: 0, high: 500_000 } } as const;

export function moistAirDensity(air: MoistAir): number {
  const { pressure, temperature, humidityRatio } = air;
  const xw = waterMoleFraction(humidityRatio);
  const molarMass = (1 - xw) * MOLAR_MASS_DRY_AIR + xw * MOLAR_MASS_WATER;
  return (pressure * molarMass) / (moistAirCompressibility(air) * MOLAR_GAS_CONSTANT * temperature);
}

/** Z of (1). */
export function moistAirCompressibility(air: MoistAir): number {
  const { pressure, temperature, humidityRatio } = air;
  requireWithin("temperature", temperature, MOIST_AIR_RANGE.temperature.low, MOIST_AIR_RANGE.temperature.high);
  requireWithin("pressure", pressure, MOIST_AIR_RANGE.pressure.low, MOIST_AIR_RANGE.pressure.high);
  requireWithin("humidity ratio", humidityRatio, 0, 10);
  const xw = waterMoleFraction(humidityRatio);
  return 1 + (moistAirVirial(temperature, xw) * pressure) / (MOLAR_GAS_CONSTANT * temperature);
}

/**
 * The same with Z = 1, for the innermost loops: reads 0.04 % low at 293 K and 1 atm, at most 0.12 % from 250 to 400 K below 120 kPa (tested).
 *
 *     rho = p (1 + w) / (R_a T (1 + 1.608 w))
 */
export function idealMoistAirDensity(air: MoistAir): number {
  requirePositive("temperature", air.temperature);
  return (
    (air.pressure * (1 + air.humidityRatio)) /
    (GAS_CONSTANT_DRY_AIR * air.temperature * (1 + AIR_WATER_MOLAR_RATIO * air.humidityRatio))
  );
}
