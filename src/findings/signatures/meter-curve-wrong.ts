/**
 * A meter read by a curve that is not its own: wrong part, wrong table.
 *
 * Equation    dM = ln(1 + e(s)),  e = a + b s straight through e_30 and e_70, held below s = 0.1;  s = m/m_max true, from the reading
 *             by M/M_max = s (1 + e(s))/(1 + e(1))
 * Symbols     e relative error, e_30 and e_70 at 30 and 70 % of the largest flow m_max; r = e_30/e_70 (a grid; r = 1 is meter-scaled)
 * Limits      smooth, either sign, may change sign along the flow
 * Validity    1 + e held above 0.1; a reading that falls while the flow grows is taken at its turning point
 */
import type { Law } from "../cause.ts";
import { hasMeter, isMeter, shiftOf } from "./prediction.ts";

const LEAST = 0.1;
/** of the largest flow: below, the error keeps its value */
const HELD_BELOW = 0.1;

export const meterCurveWrong: Law = {
  id: "meter-curve-wrong",
  applies: hasMeter,
  shapes: () => [
    { value: -1.5, weight: 0.15 },
    { value: -0.5, weight: 0.2 },
    { value: 0.3, weight: 0.25 },
    { value: 1.6, weight: 0.2 },
    { value: 2.5, weight: 0.2 },
  ],
  predict: (model, at70, ratio) => {
    const { air, largestFlow } = model.physics;
    const b = (at70 * (1 - ratio)) / 0.4;
    const a = at70 * ratio - 0.3 * b;
    const factor = (share: number) => Math.max(LEAST, 1 + a + b * Math.max(HELD_BELOW, share));
    const held = factor(HELD_BELOW);
    const atLargest = factor(1);
    return shiftOf(model, isMeter, (i) => {
      const reading = (air[i]! / largestFlow) * atLargest;
      if (reading <= HELD_BELOW * held) return Math.log(held);
      return Math.log(factor(trueShare(reading, a, b)));
    });
  },
  otherSizes: (_, at70, ratio) => [{ name: "error at 30 % of the largest flow", unit: "1", value: ratio * at70 }],
};

/** s of reading = s (1 + a + b s) */
function trueShare(reading: number, a: number, b: number): number {
  const linear = Math.max(LEAST, 1 + a);
  if (Math.abs(b) < 1e-9) return reading / linear;
  const root = Math.sqrt(Math.max(0, linear * linear + 4 * b * reading));
  return (2 * reading) / (linear + root);
}
