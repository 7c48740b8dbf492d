/**
 * Density of dry air as an ideal gas.
 *
 * Equation    rho = p / (R T)                                                                                   (1)
 * Symbols     rho kg/m3 | p Pa absolute | T K | R J/(kg K) specific gas constant of dry air
 * Validity    p > 0, T > 0 (asserted)
 * Assumes     compressibility factor 1: 0.04 % low at 293 K and 1 atm, at most 0.12 % from 250 to 400 K below 120 kPa (tested)
 * Source      [picard2008] for the molar mass, [codata2022] for the gas constant        Check published/picard2008.test.ts
 */
import { requirePositive } from "../numerics/index.ts";
import { GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";

export function dryAirDensity(pressure: number, temperature: number): number {
  requirePositive("pressure", pressure);
  requirePositive("temperature", temperature);
  return pressure / (GAS_CONSTANT_DRY_AIR * temperature);
}
