/**
 * A hot wire or film under dirt or oil: thermal resistance and added area change its law.
 *
 * Equation    1/q' = a/q + r,  q = q_0 + (m/m_max)^(1/2): what is read is the flow that a clean element would need for q'
 *             dM = ln(M/m) at the reading M; a and r such that the error is e at 70 % of the largest flow and f e at idle
 * Symbols     e relative error at 70 % of the largest flow | f error at idle over error at 70 %: free, because fibres add surface
 *             (reads high at idle) and oil insulates (low throughout) | q conductance over its share that flow adds at the largest
 *             flow, q_0 at rest: from the ends of a curve in V, else 0.05
 * Limits      grows towards high flow where f < 1
 * Source      meters/hot-wire/wire-fouling (resistances in series) with King's law, exponent 1/2 [king1914]; range of f and q_0 where
 *             no curve is given: common practice, no source
 */
import type { TallyModel } from "../../tally/index.ts";
import type { Law } from "../cause.ts";
import { hasMeter, isMeter, shiftOf } from "./prediction.ts";

const AT_REST = 0.05;
/** dM beyond which the law's formula leaves all dirt there is */
const LARGEST_SHIFT = 3;

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
    const rest = conductanceAtRest(model);
    const q = (flow: number) => rest + Math.sqrt(flow / largestFlow);
    const high = 0.7 * largestFlow;
    const low = Math.min(idleFlow, 0.5 * high);
    const [cleanLow, cleanHigh] = [1 / q(low), 1 / q(high)];
    const [fouledLow, fouledHigh] = [1 / q(low * (1 + error * atIdle)), 1 / q(high * (1 + error))];
    const area = (fouledLow - fouledHigh) / (cleanLow - cleanHigh);
    const resistance = fouledLow - area * cleanLow;
    return shiftOf(model, isMeter, (i) => {
      const reading = air[i]!;
      const clean = area / (1 / q(reading) - resistance) - rest;
      if (!(clean > 0)) return Math.sign(-error) * -LARGEST_SHIFT;
      const shift = Math.log(reading / (largestFlow * clean * clean));
      return Math.min(LARGEST_SHIFT, Math.max(-LARGEST_SHIFT, shift));
    });
  },
};

/** q_0 by V^2 = A + B m^(1/2) through the ends of the curve */
function conductanceAtRest({ engine, physics }: TallyModel): number {
  const curve = engine.meters[0]?.curve ?? null;
  if (curve === null || curve.signalUnit !== "V" || curve.flow !== "mass" || curve.points.length < 2) return AT_REST;
  const sorted = [...curve.points].sort((a, b) => a[0] - b[0]);
  const [first, last] = [sorted[0]!, sorted[sorted.length - 1]!];
  const slope = (last[0] ** 2 - first[0] ** 2) / (Math.sqrt(last[1]) - Math.sqrt(Math.max(0, first[1])));
  const still = first[0] ** 2 - slope * Math.sqrt(Math.max(0, first[1]));
  const share = still / (slope * Math.sqrt(physics.largestFlow));
  return share > 0 && Number.isFinite(share) ? Math.min(1, share) : AT_REST;
}
