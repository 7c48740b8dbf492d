/**
 * The standard atmosphere below 11 km, by geopotential altitude.
 *
 * Equation    T = T0 + L H,   p = p0 (T/T0)^(-g0 M0/(R* L)),   rho = p M0/(R* T)                                     (1)
 *             H = r z/(r + z)                                                                                   (2)
 * Symbols     H m geopotential altitude | z m geometric altitude | T K | p Pa | rho kg/m3 | L = -6.5e-3 K/m | r = 6356766 m
 * Validity    -2 km <= H <= 11 km (asserted; STANDARD_ATMOSPHERE_ALTITUDES for the caller to check before)
 * Source      [iso2533], [us1976] (same constants below 32 km; the gas constant 8.31432 is their own)
 * Check       published/us1976.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";
import { STANDARD_ATMOSPHERE, STANDARD_GRAVITY } from "../quantities/index.ts";

export const STANDARD_ATMOSPHERE_ALTITUDES = { low: -2000, high: 11_000 } as const;

const SEA_LEVEL_TEMPERATURE = 288.15;
const LAPSE_RATE = -6.5e-3;
const GAS_CONSTANT = 8.31432 / 28.9644e-3;
const EXPONENT = -STANDARD_GRAVITY / (GAS_CONSTANT * LAPSE_RATE);
const EARTH_RADIUS = 6_356_766;

export type AtmosphereState = {
  readonly temperature: number;
  readonly pressure: number;
  readonly density: number;
};

export function standardAtmosphere(altitude: number): AtmosphereState {
  requireWithin("altitude", altitude, STANDARD_ATMOSPHERE_ALTITUDES.low, STANDARD_ATMOSPHERE_ALTITUDES.high);
  const temperature = SEA_LEVEL_TEMPERATURE + LAPSE_RATE * altitude;
  const pressure = STANDARD_ATMOSPHERE * (temperature / SEA_LEVEL_TEMPERATURE) ** EXPONENT;
  return { temperature, pressure, density: pressure / (GAS_CONSTANT * temperature) };
}

/** Geopotential altitude at which the standard atmosphere has this pressure: the inverse of (1). */
export function pressureAltitude(pressure: number): number {
  requirePositive("pressure", pressure);
  const temperature = SEA_LEVEL_TEMPERATURE * (pressure / STANDARD_ATMOSPHERE) ** (1 / EXPONENT);
  return (temperature - SEA_LEVEL_TEMPERATURE) / LAPSE_RATE;
}

/** (2); 1.3 m of difference at 2900 m, 0.02 to 0.03 % in pressure at 4 km. */
export function geopotentialAltitude(geometricAltitude: number): number {
  return (EARTH_RADIUS * geometricAltitude) / (EARTH_RADIUS + geometricAltitude);
}
