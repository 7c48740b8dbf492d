/**
 * What the air's temperature does to a wire whose compensating resistor follows it not at all, in part, or whole.
 *
 * Equation    dT(T_a) = dT_cal - (1 - c)(T_a - T_cal)                  overheat that the bridge holds             (1)
 *             G' = G dT(T_a)/dT_cal,   reading/truth = m'/m with A + B m'^n = G'                                 (2)
 * Symbols     c 1: 0 a wire of fixed temperature, 1 a fixed overheat | dT K | T_a, T_cal K air, and air of calibration | G W/K king-law.ts
 * Validity    dT(T_a) > 0, m > 0 (asserted); zero where the wire loses less than at rest in the air of calibration
 * Assumes     A, B do not change with the air: that remainder is wire-air-temperature.ts and comes on top
 * Source      E^2/R_s = G dT of [king1914]; that bridges compensate by a resistor in the stream: common practice, no source
 * Check       closed form in hot-wire.props.test.ts
 */
import { requirePositive, requireWithin } from "../../numerics/index.ts";
import { type KingLaw, massFlowOfConductance, wireConductance } from "./king-law.ts";

export function compensatedWireRatio(
  law: KingLaw,
  at: {
    readonly massFlow: number;
    /** K, in the air of calibration */
    readonly overheat: number;
    /** c of (1) */
    readonly compensation: number;
    readonly airTemperature: number;
    readonly calibrationTemperature: number;
  },
): number {
  const { massFlow, overheat, compensation, airTemperature, calibrationTemperature } = at;
  requirePositive("mass flow", massFlow);
  requireWithin("compensation", compensation, 0, 2);
  const held = overheat - (1 - compensation) * (airTemperature - calibrationTemperature);
  requirePositive("overheat", held);
  const seen = (wireConductance(law, massFlow) * held) / overheat;
  return massFlowOfConductance(law, seen).massFlow / massFlow;
}
