/**
 * Air through a throttle with its leakage and idle bypass, and the area that a flow needs.
 *
 * Equation    m = (C A(f) + A_b) p_u Psi(p_m/p_u)/sqrt(R T_u)                                                    (1)
 * Symbols     m kg/s | C 1 | A m2 throttle-area.ts | A_b m2 effective area of leakage and idle air | p_u, p_m Pa before and after | T_u K
 * Validity    p_m/p_u above 0.95 is told: there the flow hardly depends on the area and the witness is worth little
 * Source      [heywood1988] eq. (7.19), App. C                               Check  published/heywood1988.test.ts
 */
import { orificeMassFlow } from "../../gas/index.ts";
import { requirePositive } from "../../numerics/index.ts";
import { type ThrottlePlate, throttleAngle, throttleArea } from "./throttle-area.ts";

export const THROTTLE_USABLE_RATIO = 0.95;

export type Throttle = ThrottlePlate & {
  readonly dischargeCoefficient: number;
  /** m2, effective */
  readonly bypassArea: number;
};

export type ThrottleState = {
  readonly upstreamPressure: number;
  readonly upstreamTemperature: number;
  readonly downstreamPressure: number;
};

export function throttleMassFlow(
  throttle: Throttle,
  angle: number,
  state: ThrottleState,
): { readonly massFlow: number; readonly usable: boolean } {
  const area = throttle.dischargeCoefficient * throttleArea(throttle, angle) + throttle.bypassArea;
  const massFlow = orificeMassFlow({ dischargeCoefficient: 1, area, ...state });
  return { massFlow, usable: state.downstreamPressure <= THROTTLE_USABLE_RATIO * state.upstreamPressure };
}

/** Effective area that lets this flow pass: the inverse of (1) for the area. */
export function effectiveAreaOf(massFlow: number, state: ThrottleState): number {
  const perArea = orificeMassFlow({ dischargeCoefficient: 1, area: 1, ...state });
  requirePositive("flow per area", perArea * Math.sign(massFlow || 1));
  return massFlow / perArea;
}

/** The inverse of (1) for the angle: closed where leakage and idle air already carry the flow, null beyond fully open. */
export function throttleAngleOf(throttle: Throttle, massFlow: number, state: ThrottleState): number | null {
  const area = (effectiveAreaOf(massFlow, state) - throttle.bypassArea) / throttle.dischargeCoefficient;
  return throttleAngle(throttle, Math.max(0, area));
}
