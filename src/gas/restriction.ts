/**
 * Pressure lost in a filter, duct or bend, and the flow through an opening at small pressure difference.
 *
 * Equation    dp = k m^2/rho                                                                                    (1)
 *             m = C A sqrt(2 rho dp)                          incompressible orifice                             (2)
 * Symbols     dp Pa | k 1/m4 resistance of the part | m kg/s | rho kg/m3 upstream | C 1 | A m2
 * Validity    dp below about a tenth of the pressure; rho > 0, k >= 0 (asserted). Signed: dp follows the direction of m
 * Assumes     fully turbulent, so that k does not change with flow
 * Source      [incropera2002] section 8.1.3 (friction and loss factors); (2) Bernoulli        Check published/air-box.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";

export function restrictionPressureDrop(massFlow: number, density: number, resistance: number): number {
  requirePositive("density", density);
  requireWithin("resistance", resistance, 0, Number.MAX_VALUE);
  return (resistance * massFlow * Math.abs(massFlow)) / density;
}

/** The inverse of (1). */
export function restrictionMassFlow(pressureDrop: number, density: number, resistance: number): number {
  requirePositive("density", density);
  requirePositive("resistance", resistance);
  return Math.sign(pressureDrop) * Math.sqrt((density * Math.abs(pressureDrop)) / resistance);
}

/** (2); k of (1) is 1/(2 C^2 A^2). */
export function incompressibleOrificeFlow(opening: {
  readonly dischargeCoefficient: number;
  readonly area: number;
  readonly density: number;
  readonly pressureDrop: number;
}): number {
  const { dischargeCoefficient, area, density, pressureDrop } = opening;
  requirePositive("effective area", dischargeCoefficient * area);
  return restrictionMassFlow(pressureDrop, density, 1 / (2 * (dischargeCoefficient * area) ** 2));
}
