/**
 * Air that enters the exhaust before the probe: crack, gasket, secondary air valve that does not close.
 *
 * Equation    dF = ln(1 + X/m),  X = X_idle (m_idle/m)^q
 * Symbols     X kg/s | q 1 a gap, through which the pulses at low flow suck and steady back pressure at high flow does not; 0 a pump
 *             that gives the same always
 * Limits      strong at idle and fading; a leak by its trims, but meter and pressure agree
 * Validity    m/m_idle not below 1/2
 * Source      balance of oxygen; q common practice, no source
 */
import type { Law } from "../cause.ts";
import { hasFuelControl, isFuelSide, shiftOf } from "./prediction.ts";

export const exhaustAirAdded: Law = {
  id: "exhaust-air-added",
  applies: hasFuelControl,
  shapes: ({ engine }) =>
    engine.secondaryAir === "none"
      ? [{ value: 1, weight: 1 }]
      : [
          { value: 1, weight: 0.75 },
          { value: 0, weight: 0.25 },
        ],
  predict: (model, added, fading) => {
    const { air, idleFlow } = model.physics;
    return shiftOf(model, isFuelSide, (i) => {
      const overIdle = Math.max(0.5, air[i]! / idleFlow);
      return Math.log1p(added / idleFlow / overIdle ** (1 + fading));
    });
  },
};
