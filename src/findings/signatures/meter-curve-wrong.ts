/**
 * A meter read by a curve that is not its own: wrong part, wrong table.
 *
 * Equation    dM = ln(1 + e(m)),  e straight in m between e_30 and e_70, held at its values at 10 % and 100 % of the largest flow
 * Symbols     e relative error, e_30 and e_70 at 30 and 70 % of the largest flow m_max; r = e_30/e_70 (a grid; r = 1 is meter-scaled)
 * Limits      smooth, either sign, may change sign along the flow
 * Validity    1 + e held above 0.05
 */
import type { Law } from "../cause.ts";
import { hasMeter, isMeter, ramp, shiftOf } from "./prediction.ts";

const LEAST = 0.05;

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
    return shiftOf(model, isMeter, (i) => {
      const place = 0.1 + 0.9 * ramp(air[i]! / largestFlow, 0.1, 1);
      return Math.log(Math.max(LEAST, 1 + at70 * (ratio + ((1 - ratio) * (place - 0.3)) / 0.4)));
    });
  },
  otherSizes: (_, at70, ratio) => [{ name: "error at 30 % of the largest flow", unit: "1", value: ratio * at70 }],
};
