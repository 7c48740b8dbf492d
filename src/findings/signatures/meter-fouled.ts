/**
 * A hot wire or film under dirt or oil: thermal resistance and added area change its law.
 *
 * Equation    dM = ln(1 + e (1 + (r - 1) x)),  x = ln(m_70/m)/ln(m_70/m_idle)
 * Symbols     e relative error at 70 % of the largest flow | r error at idle over error at 70 %: free, because fibres add
 *             surface (reads high at idle) and oil insulates (low throughout) | m_70, m_idle flows of this job
 * Limits      grows towards high flow where r < 1
 * Source      common practice, no source, for the range of r
 */
import type { Law } from "../cause.ts";
import { hasMeter, isMeter, shiftOf } from "./prediction.ts";

export const meterFouled: Law = {
  id: "meter-fouled",
  applies: (model) =>
    hasMeter(model) && model.engine.meters.every((m) => m.kind === "hot-wire" || m.kind === "hot-film"),
  shapes: () => [
    { value: -0.5, weight: 0.2 },
    { value: 0, weight: 0.3 },
    { value: 0.3, weight: 0.25 },
    { value: 0.6, weight: 0.15 },
    { value: 0.95, weight: 0.1 },
  ],
  predict: (model, error, atIdle) => {
    const { air, idleFlow, largestFlow } = model.physics;
    const at70 = 0.7 * largestFlow;
    const span = Math.max(Math.log(at70 / idleFlow), 0.3);
    return shiftOf(model, isMeter, (i) => {
      const x = Math.min(1.3, Math.log(at70 / air[i]!) / span);
      return Math.log(Math.max(0.05, 1 + error * (1 + (atIdle - 1) * x)));
    });
  },
};
