/**
 * Resistance of platinum against temperature, and back.
 *
 * Equation    R/R_0 = 1 + A t + B t^2 + C (t - 100) t^3,  C only below 0 degC                                    (1)
 * Symbols     t degC (the functions take K) | A = 3.9083e-3, B = -5.775e-7, C = -4.183e-12
 * Validity    -200 to 850 degC (asserted). Wires of meters are of this or a similar grade: common practice, no source
 * Source      [iec60751]                                                     Check  published/iec60751.test.ts
 */
import { findRoot, requireWithin } from "../numerics/index.ts";
import { ZERO_CELSIUS } from "../quantities/index.ts";

const A = 3.9083e-3;
const B = -5.775e-7;
const C = -4.183e-12;
export const PLATINUM_TEMPERATURES = { low: 73.15, high: 1123.15 } as const;

/** R/R_0, R_0 at 0 degC */
export function platinumResistanceRatio(temperature: number): number {
  requireWithin("temperature", temperature, PLATINUM_TEMPERATURES.low, PLATINUM_TEMPERATURES.high);
  const t = temperature - ZERO_CELSIUS;
  return 1 + t * (A + t * (B + (t < 0 ? C * (t - 100) * t : 0)));
}

export function platinumTemperature(resistanceRatio: number): number {
  const outcome = findRoot((t) => platinumResistanceRatio(t) - resistanceRatio, PLATINUM_TEMPERATURES);
  if (outcome.status !== "found") throw new Error(`Assertion failed: no temperature for ratio ${resistanceRatio}`);
  return outcome.root;
}
