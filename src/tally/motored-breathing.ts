/**
 * How far a point's cylinders breathe as motored ones do: with the fuel cut they keep cold air back, not hot burnt gas, at pressures
 * lower than the residual-gas law of a firing engine reaches.
 *
 * Equation    share = ln(p_a/p)/ln 4 with the fuel cut, 0 at least; else 0
 * Symbols     p_a, p Pa barometer and manifold
 * Limits      nothing at the barometer: an engine without a throttle has little residual gas, fired or not; 1 at a quarter of it
 * Source      common practice, no source
 */
import type { OperatingPoint } from "../channels/index.ts";

export function motoredShare(point: OperatingPoint, pressure: number, barometer: number): number {
  if (!point.states.includes("fuel-cut") || !(pressure > 0)) return 0;
  return Math.max(0, Math.log(barometer / pressure) / Math.log(4));
}
