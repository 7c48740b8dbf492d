/**
 * Viscosity and thermal conductivity of air.
 *
 * Equation    mu = 1.458e-6 T^1.5/(T + 110.4)                     (Sutherland)                                   (1)
 *             k  = 2.64638e-3 T^1.5/(T + 245.4 10^(-12/T))                                                        (2)
 * Symbols     mu Pa s | k W/(m K) | T K
 * Validity    150 to 500 K at pressures near the atmosphere (asserted); within 1 % (mu, 1.2 % at 500 K) and 3.5 % (k) of handbook tables (tested)
 * Source      [us1976] eqs. (51), (53)                       Check published/us1976.test.ts, published/air-tables.test.ts
 */
import { requireWithin } from "../numerics/index.ts";

export function airViscosity(temperature: number): number {
  requireWithin("temperature", temperature, 150, 500);
  return (1.458e-6 * temperature ** 1.5) / (temperature + 110.4);
}

export function airConductivity(temperature: number): number {
  requireWithin("temperature", temperature, 150, 500);
  return (2.64638e-3 * temperature ** 1.5) / (temperature + 245.4 * 10 ** (-12 / temperature));
}
