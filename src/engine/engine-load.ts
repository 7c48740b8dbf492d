/**
 * The engine computer's own words for air: absolute and calculated load of SAE J1979.
 *
 * Equation    absolute load   = (m / (N/2)) / (1.184 kg/m3 V)                                                    (1)
 *             calculated load = m / (m_max(N) (p_a/29.92 inHg) sqrt(298 K/T_a))                                   (2)
 * Symbols     m kg/s | N 1/s revolutions | V m3 displacement of all cylinders | m_max kg/s at full load, 25 degC and 29.92 inHg |
 *             p_a Pa barometer | T_a K ambient air
 * Validity    N > 0, V > 0 (asserted); (2) of a spark-ignition engine
 * Assumes     computed by the engine computer from what it believes: never a second witness beside its own air figure
 * Source      [j1979] PID $43 and PID $04 (1.184 g/L is air at 25 degC and one atmosphere)        Check published/j1979.test.ts
 */
import { requirePositive } from "../numerics/index.ts";

/** kg/m3 [j1979] PID $43 */
export const ABSOLUTE_LOAD_DENSITY = 1.184;
/** Pa: 29.92 conventional inches of mercury [j1979] */
const STANDARD_BAROMETER = 29.92 * 3386.388640341;
const STANDARD_AMBIENT = 298;

export type LoadState = {
  readonly massFlow: number;
  readonly displacement: number;
  readonly engineSpeed: number;
};

export function absoluteLoad(state: LoadState): number {
  return state.massFlow / flowAtUnitLoad(state.displacement, state.engineSpeed);
}

/** The inverse of (1). */
export function massFlowOfAbsoluteLoad(state: {
  readonly absoluteLoad: number;
  readonly displacement: number;
  readonly engineSpeed: number;
}): number {
  return state.absoluteLoad * flowAtUnitLoad(state.displacement, state.engineSpeed);
}

export function calculatedLoad(state: {
  readonly massFlow: number;
  /** kg/s at this speed, full load, 25 degC and 29.92 inHg */
  readonly fullLoadFlow: number;
  readonly barometer: number;
  readonly ambientTemperature: number;
}): number {
  return state.massFlow / (state.fullLoadFlow * loadCorrection(state.barometer, state.ambientTemperature));
}

/** The inverse of (2). */
export function massFlowOfCalculatedLoad(state: {
  readonly calculatedLoad: number;
  readonly fullLoadFlow: number;
  readonly barometer: number;
  readonly ambientTemperature: number;
}): number {
  return state.calculatedLoad * state.fullLoadFlow * loadCorrection(state.barometer, state.ambientTemperature);
}

function flowAtUnitLoad(displacement: number, engineSpeed: number): number {
  requirePositive("displacement", displacement);
  requirePositive("engine speed", engineSpeed);
  return (ABSOLUTE_LOAD_DENSITY * displacement * engineSpeed) / 2;
}

function loadCorrection(barometer: number, ambientTemperature: number): number {
  requirePositive("barometer", barometer);
  requirePositive("ambient temperature", ambientTemperature);
  return (barometer / STANDARD_BAROMETER) * Math.sqrt(STANDARD_AMBIENT / ambientTemperature);
}
