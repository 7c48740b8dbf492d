/**
 * Flow of a positive-displacement pump whose slip follows the root of the pressure it works against.
 *
 * Equation    V_rev = (a_1/f) sqrt((p_out - p_in)/p_out) + a_0                                                   (1)
 *             n = p_in f V_rev / (R T_in)                                                                       (2)
 * Symbols     V_rev m3 a revolution | f 1/s | a_0 m3, a_1 m3/s calibration constants | p Pa | n mol/s | T K
 * Validity    p_out >= p_in > 0, f > 0 (asserted)
 * Source      [cfr1065] 1065.642(a), [cfr1066] 1066.630(a)                    Check published/cfr1065.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";
import { MOLAR_GAS_CONSTANT } from "../quantities/index.ts";

export type DisplacementPump = {
  readonly slipConstant: number;
  readonly volumeConstant: number;
  readonly speed: number;
  readonly inletPressure: number;
  readonly outletPressure: number;
};

/** (1) */
export function pumpVolumePerRevolution(pump: DisplacementPump): number {
  const { slipConstant, volumeConstant, speed, inletPressure, outletPressure } = pump;
  requirePositive("speed", speed);
  requirePositive("inlet pressure", inletPressure);
  requireWithin("inlet pressure", inletPressure, 0, outletPressure);
  return (slipConstant / speed) * Math.sqrt((outletPressure - inletPressure) / outletPressure) + volumeConstant;
}

/** (2) */
export function pumpMolarFlow(
  pump: DisplacementPump & { readonly inletTemperature: number; readonly gasConstant?: number },
): number {
  requirePositive("inlet temperature", pump.inletTemperature);
  const volumeFlow = pump.speed * pumpVolumePerRevolution(pump);
  return (pump.inletPressure * volumeFlow) / ((pump.gasConstant ?? MOLAR_GAS_CONSTANT) * pump.inletTemperature);
}
