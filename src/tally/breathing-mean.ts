/**
 * What is expected of an engine's breathing before looking: level, residual-gas law, warming of the charge.
 *
 * Equation    ln eta = ln eta_0 + s ln f(p_e/p) - ln(T_c/T_i)
 * Symbols     eta_0 stated or assumed level | f residual-gas factor of the ideal cycle | s its strength (1 expected)
 *             T_c K charge, T_i K intake air
 * Source      [heywood1988] section 6.2 for f; charge warming as in engine/charge-temperature
 */
import { chargeTemperature, type EngineDescription, residualGasFactor } from "../engine/index.ts";
import type { Assumptions } from "./assumptions.ts";
import type { PointState } from "./tally-model.ts";

const COOLANT_WARM = 363; // K, where not recorded

export function logBreathingMean(
  engine: EngineDescription,
  physics: PointState,
  a: Assumptions,
  i: number,
  coolant: number | null,
): number {
  const state = { exhaustPressure: physics.exhaustPressure[i]!, pressure: physics.pressure[i]! };
  return logBreathingMeanAt(engine, a, state) - logWarming(physics, i, coolant);
}

type Pressures = { readonly exhaustPressure: number; readonly pressure: number };

/** The same without the warming of the charge, for any state. */
export function logBreathingMeanAt(engine: EngineDescription, a: Assumptions, state: Pressures): number {
  const level = engine.volumetricEfficiency?.value ?? a.breathingMean;
  return Math.log(level) + a.residualStrength * logResidualAt(engine, state);
}

export function logResidual(engine: EngineDescription, physics: PointState, i: number): number {
  return logResidualAt(engine, { exhaustPressure: physics.exhaustPressure[i]!, pressure: physics.pressure[i]! });
}

/** ln f(p_e/p), not below the value at a fifth of the exhaust pressure, where the law no longer describes an engine. */
function logResidualAt(engine: EngineDescription, { exhaustPressure, pressure }: Pressures): number {
  const compressionRatio = engine.compressionRatio ?? (engine.ignition === "spark" ? 10 : 17);
  const ratio = Math.min(5, exhaustPressure / pressure);
  return Math.log(residualGasFactor({ exhaustOverIntakePressure: ratio, compressionRatio }));
}

/** ln(T_c/T_i): how much thinner the charge is at the valve than at the sensor. */
export function logWarming(physics: PointState, i: number, coolant: number | null): number {
  const intake = physics.intakeTemperature[i]!;
  const charge = chargeTemperature({
    intakeTemperature: intake,
    coolantTemperature: coolant ?? COOLANT_WARM,
    massFlow: Math.max(physics.air[i]!, 1e-4),
  });
  return Math.log(charge / intake);
}
