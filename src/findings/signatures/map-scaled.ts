/**
 * A manifold pressure reading off by a share: of the difference from ambient (a leaky hose) or of the whole (a wrong part).
 *
 * Equation    hose  p_read = p_a + (1 + k)(p - p_a),  p = p_a + (p_read - p_a)/(1 + k)
 *             part  p_read = (1 + k) p;               dP = ln(p_read/p) in both
 *             standing, key on: hose nothing, part k p_a;  drop at full load: hose k (p_a - p), part -k p
 * Symbols     k relative | p_a ambient Pa
 * Limits      the hose errs most at idle and not at ambient pressure, so that the key-on check is blind to it; the part errs alike
 *             everywhere and shows with key on
 */
import type { Law } from "../cause.ts";
import { least, MOST_SHARE } from "./most-share.ts";
import { hasPressureSensor, isPressure, shiftOf } from "./prediction.ts";

const ABOUT_AMBIENT = 0;
const ABOUT_ZERO = 1;

export const mapScaled: Law = {
  id: "map-scaled",
  applies: hasPressureSensor,
  shapes: () => [
    { value: ABOUT_AMBIENT, weight: 0.5 },
    { value: ABOUT_ZERO, weight: 0.5 },
  ],
  /** a reading nearer to ambient than the truth holds some truth: p not below (1 - MOST_SHARE) p_read */
  most: ({ physics }, sign) => {
    if (sign > 0) return Infinity;
    const lowest = least(physics.pressure);
    return (MOST_SHARE * lowest) / (meanOf(physics.barometer) - (1 - MOST_SHARE) * lowest);
  },
  predict: (model, share, pivot) => {
    const { pressure, barometer } = model.physics;
    if (pivot === ABOUT_ZERO) {
      const effect = Math.log1p(share);
      return shiftOf(
        model,
        isPressure,
        () => effect,
        ({ kind }) => {
          if (kind === "pressure-against-barometer") return (share * meanOf(barometer)) / 1000;
          return kind === "full-load-pressure-drop" ? (-share * meanOf(barometer)) / 1000 : 0;
        },
      );
    }
    return shiftOf(
      model,
      isPressure,
      (i) => {
        const truth = barometer[i]! + (pressure[i]! - barometer[i]!) / (1 + share);
        return Math.log(pressure[i]! / Math.max(truth, 0.1 * pressure[i]!));
      },
      // of the few kPa lost at full load
      ({ kind }) => (kind === "full-load-pressure-drop" ? (share * model.assumptions.ductDrop) / 1000 : 0),
    );
  },
  otherSizes: ({ physics }, _, pivot) => [
    { name: "pivot", unit: "kPa", value: pivot === ABOUT_ZERO ? 0 : meanOf(physics.barometer) / 1000, steps: true },
  ],
};

function meanOf(values: Float64Array): number {
  return values.reduce((sum, v) => sum + v, 0) / values.length;
}
