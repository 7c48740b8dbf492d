/**
 * A manifold pressure reading off by a share: of the difference from ambient (a leaky hose) or of the whole (a wrong part).
 *
 * Equation    hose  p_read = p_a + (1 + k)(p - p_a),  p = p_a + (p_read - p_a)/(1 + k)
 *             part  p_read = (1 + k) p;               dP = ln(p_read/p) in both, and by
 *             the residual gas expected at p_read (expected-filling)
 *             the throttle witness, made with p: dH of throttle-witness
 *             standing, key on: hose nothing, part k p_a;  drop at full load: hose k (p_a - p), part -k p
 * Symbols     k relative | p_a ambient Pa
 * Limits      the hose errs most at idle and not at ambient pressure, so that the key-on check is blind to it; the part errs alike
 *             everywhere and shows with key on
 */
import type { Law } from "../cause.ts";
import { logOfPressure } from "./expected-filling.ts";
import { least, MOST_SHARE } from "./most-share.ts";
import { hasPressureSensor, isPressure, isThrottle, shiftsOf } from "./prediction.ts";
import { throttleByPressure } from "./throttle-witness.ts";

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
    const { pressure, barometer, exhaustPressure } = model.physics;
    const ambient = meanOf(barometer);
    const truth = (i: number) => {
      if (pivot === ABOUT_ZERO) return pressure[i]! / (1 + share);
      const nearer = barometer[i]! + (pressure[i]! - barometer[i]!) / (1 + share);
      return Math.max(nearer, (1 - MOST_SHARE) * pressure[i]!);
    };
    const onPressure = (i: number) =>
      logOfPressure(model, pressure[i]!, exhaustPressure[i]!) - logOfPressure(model, truth(i), exhaustPressure[i]!);
    return shiftsOf(
      model,
      [
        [isPressure, onPressure],
        [isThrottle, (i) => throttleByPressure(model, i, truth(i))],
      ],
      ({ kind, ownBarometer }) => {
        if (kind === "pressure-against-barometer") return pivot === ABOUT_ZERO ? (share * ambient) / 1000 : 0;
        if (kind !== "full-load-pressure-drop") return 0;
        // of the few kPa lost at full load, where one sensor reads both ends or the hose leaks
        const read = pivot === ABOUT_ZERO && ownBarometer !== true ? -ambient : model.assumptions.ductDrop;
        return (share * read) / 1000;
      },
    );
  },
  otherSizes: ({ physics }, _, pivot) => [
    { name: "pivot", unit: "kPa", value: pivot === ABOUT_ZERO ? 0 : meanOf(physics.barometer) / 1000, steps: true },
  ],
};

function meanOf(values: Float64Array): number {
  return values.reduce((sum, v) => sum + v, 0) / values.length;
}
