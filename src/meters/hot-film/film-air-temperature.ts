/**
 * Residual temperature error of a film meter, and its undoing.
 *
 * Equation    reading/truth = 1 + c (T - T_cal)                                                                 (1)
 * Symbols     c 1/K, of the order of 1e-4 to 1e-3 | T K air at the meter
 * Validity    |c (T - T_cal)| < 0.5 (asserted)
 * Source      common practice, no source: makers state a few per cent over the range of temperature; c is the user's or uncertain
 */
import { requirePositive, requireWithin } from "../../numerics/index.ts";

export function filmTemperatureRatio(at: {
  readonly coefficient: number;
  readonly temperature: number;
  readonly calibrationTemperature: number;
}): number {
  requirePositive("temperature", at.temperature);
  const change = at.coefficient * (at.temperature - at.calibrationTemperature);
  requireWithin("temperature error", change, -0.5, 0.5);
  return 1 + change;
}
