/**
 * What is left of the weather in a meter's mass when the engine computer corrects only some of it.
 *
 * Equation    reading/truth = (rho_assumed/rho)^k                                                               (1)
 *             rho_assumed takes the measured value of what is corrected and the air of calibration for the rest
 * Symbols     k of sensed-density.ts: 1/2 vane, 1 vortex, 0 wire and film | rho kg/m3
 * Example     a vane with its temperature corrected alone reads sqrt(p_cal/p): 13 % rich at 2000 m
 * Validity    T, p > 0 (asserted)
 * Source      sensed-density.ts with the ideal gas                           Check  meter-environment.test.ts
 */
import type { MeterKind } from "../engine/index.ts";
import { idealMoistAirDensity, type MoistAir } from "../gas/index.ts";
import { sensedDensityExponent } from "./sensed-density.ts";

export const COMPENSATIONS = ["none", "temperature", "pressure", "temperature-and-pressure"] as const;
export type Compensation = (typeof COMPENSATIONS)[number];

export function compensationRatio(at: {
  readonly kind: MeterKind;
  readonly compensation: Compensation;
  readonly air: MoistAir;
  readonly calibration: MoistAir;
}): number {
  const { kind, compensation, air, calibration } = at;
  const assumed = {
    pressure: compensation.includes("pressure") ? air.pressure : calibration.pressure,
    temperature: compensation.includes("temperature") ? air.temperature : calibration.temperature,
    humidityRatio: calibration.humidityRatio,
  };
  return (idealMoistAirDensity(assumed) / idealMoistAirDensity(air)) ** sensedDensityExponent(kind);
}
