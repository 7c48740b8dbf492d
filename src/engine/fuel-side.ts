/**
 * What fuel trims and lambda say about the air: the engine computer doses by its own air figure, the trims say how far that
 * missed, lambda says what mixture came of it.
 *
 * Equation    air by fuel / air dosed by = (1 + trim) lambda / lambda_commanded                                   (1)
 *             1 + trim = (1 + short)(1 + long)   or   1 + short + long                                           (2)
 * Symbols     trim 1 (0.1 = ten per cent more fuel) | lambda 1
 * Validity    lambda > 0, trims above -1 (asserted)
 * Assumes     delivered fuel follows the command; injector, fuel and probe faults are the inference's business
 * Source      definition (mass balance of fuel); (2) [j1979] defines the trims, how a maker joins them varies: common practice, no source
 * Check       published/heywood1988.test.ts (lambda as the ratio of air-fuel ratios)
 */
import { requirePositive } from "../numerics/index.ts";

export function fuelSideFactor(state: {
  readonly trim: number;
  readonly lambda: number;
  readonly lambdaCommanded: number;
}): number {
  requirePositive("1 + trim", 1 + state.trim);
  requirePositive("lambda", state.lambda);
  requirePositive("commanded lambda", state.lambdaCommanded);
  return ((1 + state.trim) * state.lambda) / state.lambdaCommanded;
}

/** (2), as a trim: 0 means none. */
export function combineTrims(shortTrim: number, longTrim: number, how: "multiplied" | "added"): number {
  return how === "added" ? shortTrim + longTrim : shortTrim + longTrim + shortTrim * longTrim;
}

/** Air from fuel: lambda AFR fuel. */
export function airFromFuel(state: {
  readonly fuelFlow: number;
  readonly lambda: number;
  readonly stoichiometricAirFuelRatio: number;
}): number {
  return state.lambda * state.stoichiometricAirFuelRatio * state.fuelFlow;
}

/** Fuel for air: the inverse of `airFromFuel`. */
export function fuelForAir(state: {
  readonly airFlow: number;
  readonly lambda: number;
  readonly stoichiometricAirFuelRatio: number;
}): number {
  requirePositive("lambda", state.lambda);
  return state.airFlow / (state.lambda * state.stoichiometricAirFuelRatio);
}
