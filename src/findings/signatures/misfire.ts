/**
 * Charges that do not burn: their oxygen reaches the probe, which calls it lean.
 *
 * Equation    dF = -ln(1 - s g)
 * Symbols     s share of firings that fail | g 1 where they fail: everywhere; at low cylinder filling (idle); at high filling
 *             (ignition that breaks down under pressure)
 * Limits      air side untouched; trims make the burning cylinders rich
 * Source      balance of oxygen: an unburnt charge brings all of its own; that a probe feels its oxygen more than its fuel is common
 *             practice, no source
 */
import type { Law } from "../cause.ts";
import { hasFuelControl, isFuelSide, ramp, shiftOf } from "./prediction.ts";

const EVERYWHERE = 0;
const LOW_FILLING = 1;
const HIGH_FILLING = 2;
/** a share beyond which the engine would not run */
const MOST = 0.9;

export const misfire: Law = {
  id: "misfire",
  applies: hasFuelControl,
  shapes: () => [
    { value: EVERYWHERE, weight: 0.4 },
    { value: LOW_FILLING, weight: 0.35 },
    { value: HIGH_FILLING, weight: 0.25 },
  ],
  predict: (model, share, where) => {
    const { pressure, barometer } = model.physics;
    return shiftOf(model, isFuelSide, (i) => {
      const filling = pressure[i]! / barometer[i]!;
      const here =
        where === LOW_FILLING ? 1 - ramp(filling, 0.4, 0.6) : where === HIGH_FILLING ? ramp(filling, 0.65, 0.85) : 1;
      return -Math.log1p(-Math.min(MOST, share * here));
    });
  },
};
