/**
 * Air drawn by a four-stroke engine from its manifold, and the inverse.
 *
 * Equation    m = eta p V N / (2 R T)                                                                            (1)
 * Symbols     m kg/s dry air | eta volumetric efficiency referred to the manifold, 1 | p Pa absolute | V m3 displacement of all
 *             cylinders | N 1/s revolutions | R J/(kg K) | T K of the charge in the manifold
 * Validity    p >= 0, V > 0, N >= 0, T > 0 (asserted)
 * Assumes     the manifold holds dry fresh air; what else displaces it (vapour, fuel, recirculated gas) is the caller's factor
 * Source      [heywood1988] eqs. (2.27a), (2.27b)                            Check published/heywood1988.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";
import { GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";

export type Breathing = {
  /** Pa, absolute */
  readonly manifoldPressure: number;
  /** m3, all cylinders */
  readonly displacement: number;
  /** 1/s, revolutions */
  readonly engineSpeed: number;
  /** K */
  readonly chargeTemperature: number;
  readonly gasConstant?: number;
};

export function speedDensityFlow(state: Breathing & { readonly volumetricEfficiency: number }): number {
  return state.volumetricEfficiency * flowAtFullFilling(state);
}

/** Volumetric efficiency referred to the manifold; the inverse of `speedDensityFlow`. Needs a turning engine. */
export function volumetricEfficiencyOf(state: Breathing & { readonly massFlow: number }): number {
  requirePositive("engine speed", state.engineSpeed);
  requirePositive("manifold pressure", state.manifoldPressure);
  return state.massFlow / flowAtFullFilling(state);
}

/** m3/s swept by a four-stroke engine: V N / 2. */
export function displacementFlow(displacement: number, engineSpeed: number): number {
  requirePositive("displacement", displacement);
  requireWithin("engine speed", engineSpeed, 0, Number.MAX_VALUE);
  return (displacement * engineSpeed) / 2;
}

function flowAtFullFilling(state: Breathing): number {
  const { manifoldPressure, displacement, engineSpeed, chargeTemperature, gasConstant = GAS_CONSTANT_DRY_AIR } = state;
  requireWithin("manifold pressure", manifoldPressure, 0, Number.MAX_VALUE);
  requirePositive("charge temperature", chargeTemperature);
  return (manifoldPressure * displacementFlow(displacement, engineSpeed)) / (gasConstant * chargeTemperature);
}
