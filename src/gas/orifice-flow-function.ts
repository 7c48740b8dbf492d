/**
 * Dimensionless mass flow of an ideal gas, isentropic from rest to the throat.
 *
 * Equation    Psi = sqrt(2g/(g-1)) r^(1/g) sqrt(1 - r^((g-1)/g)),   r > r*                                          (1)
 *             Psi = sqrt(g) (2/(g+1))^((g+1)/(2(g-1))),             r <= r* (choked)                                (2)
 *             r*  = (2/(g+1))^(g/(g-1))                                                                         (3)
 * Symbols     r throat over total upstream pressure, 1 | g ratio of specific heats, 1
 * Validity    r >= 0, 1 < g < 2 (asserted); Psi = 0 from r = 1 up: the flow that then runs backwards is the caller's to swap
 * Numerics    written with log and expm1: the plain form loses half of the digits near r = 1 and is not monotone there (tested)
 * Source      [heywood1988] App. C eqs. (C.7) to (C.9)                       Check published/heywood1988.test.ts
 */
import { requireWithin } from "../numerics/index.ts";
import { GAMMA_AIR } from "../quantities/index.ts";

export function orificeFlowFunction(pressureRatio: number, gamma: number = GAMMA_AIR): number {
  requireWithin("pressure ratio", pressureRatio, 0, Number.MAX_VALUE);
  requireWithin("ratio of specific heats", gamma, 1.0001, 2);
  if (pressureRatio >= 1) return 0;
  const r = Math.max(pressureRatio, criticalPressureRatio(gamma));
  const logRatio = Math.log(r);
  const a = (gamma - 1) / gamma;
  return Math.exp(logRatio / gamma) * Math.sqrt((-2 * Math.expm1(a * logRatio)) / a);
}

/** (3), 0.5283 for air */
export function criticalPressureRatio(gamma: number = GAMMA_AIR): number {
  return (2 / (gamma + 1)) ** (gamma / (gamma - 1));
}

/** (2), 0.6847 for air */
export function chokedFlowFunction(gamma: number = GAMMA_AIR): number {
  return Math.sqrt(gamma) * (2 / (gamma + 1)) ** ((gamma + 1) / (2 * (gamma - 1)));
}

/** dPsi/dr: zero when choked, minus infinity at r = 1. */
export function orificeFlowFunctionSlope(pressureRatio: number, gamma: number = GAMMA_AIR): number {
  if (pressureRatio <= criticalPressureRatio(gamma) || pressureRatio > 1) return 0;
  const psi = orificeFlowFunction(pressureRatio, gamma);
  const a = (gamma - 1) / gamma;
  const power = pressureRatio ** (2 / gamma);
  // d(Psi^2)/dr = (2/a) (2/g r^(2/g - 1) - (1 + 1/g) r^(1/g)), with Psi^2 = (2/a)(r^(2/g) - r^(1 + 1/g))
  const slopeOfSquare =
    (2 / a) * (((2 / gamma) * power) / pressureRatio - (1 + 1 / gamma) * pressureRatio ** (1 / gamma));
  return slopeOfSquare / (2 * psi);
}
