/**
 * Temperature of the charge in the manifold, between the intake air and the coolant: the air is warmed by walls on its way.
 *
 * Equation    T = T_a + s(m) (T_c - T_a),   s = 1 - exp(-q (m/m_0)^-b),   q = -ln(1 - s_0)                        (1)
 * Symbols     T_a K intake air | T_c K coolant (stands for the walls) | m kg/s | s share of the difference taken up, s_0 at m_0
 * Validity    T > 0 (asserted), m >= 0: at rest the charge takes the wall's temperature
 * Source      form: heat exchanger of constant wall temperature [incropera2002] eq. (8.42), where b = 0.2 for turbulent pipe flow.
 *             The numbers of DEFAULT_CHARGE_HEATING are common practice, no source: the inference treats s_0 as uncertain
 * Check       none published; limits tested in air-and-fuel.props.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";

export type ChargeHeating = {
  /** share of the difference taken up at `referenceFlow` */
  readonly share: number;
  /** kg/s */
  readonly referenceFlow: number;
  readonly exponent: number;
};

/** For a port-injected engine of about two litres; common practice, no source. */
export const DEFAULT_CHARGE_HEATING: ChargeHeating = { share: 0.3, referenceFlow: 0.01, exponent: 0.4 };

export type ChargeState = {
  readonly intakeTemperature: number;
  readonly coolantTemperature: number;
  readonly massFlow: number;
};

export function chargeTemperature(state: ChargeState, heating: ChargeHeating = DEFAULT_CHARGE_HEATING): number {
  const { intakeTemperature, coolantTemperature, massFlow } = state;
  requirePositive("intake temperature", intakeTemperature);
  requirePositive("coolant temperature", coolantTemperature);
  return intakeTemperature + chargeHeatingShare(massFlow, heating) * (coolantTemperature - intakeTemperature);
}

/** s(m) of (1): 1 at rest, falling with the flow. */
export function chargeHeatingShare(massFlow: number, heating: ChargeHeating = DEFAULT_CHARGE_HEATING): number {
  requireWithin("mass flow", massFlow, 0, Number.MAX_VALUE);
  requireWithin("share", heating.share, 0, 1 - Number.EPSILON);
  if (massFlow === 0) return heating.share === 0 ? 0 : 1;
  const transferUnits = -Math.log1p(-heating.share) * (massFlow / heating.referenceFlow) ** -heating.exponent;
  return -Math.expm1(-transferUnits);
}
