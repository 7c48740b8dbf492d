/**
 * A hole in the manifold.
 *
 * Equation    M = m - L,  L = Cd A p_a Psi(p/p_a) / sqrt(R T_a) inward below ambient; outward above it
 *             dM = dH = ln((m - L)/m),  d ln M/d ln m = m/(m - L)
 * Symbols     M metered, H through the throttle, m into the cylinders, L leak, kg/s | A m2 | Cd 0.65, sharp-edged | p manifold,
 *             p_a ambient, Pa
 * Limits      choked at idle (constant L), gone at full load; on a boosted engine the sign turns under boost
 *             no trim moves where the computer doses by pressure: the sensor sees what entered
 * Source      [heywood1988] App. C
 */
import { orificeMassFlow } from "../../gas/index.ts";
import type { TallyModel } from "../../tally/index.ts";
import { type Law, ONE_SHAPE } from "../cause.ts";
import { hasMeter, isMeter, isThrottle, pastLeak } from "./prediction.ts";

export const manifoldLeak: Law = {
  id: "manifold-leak",
  applies: (model) => hasMeter(model) || model.witnesses.includes("pressure"),
  shapes: () => ONE_SHAPE,
  predict: (model, area) =>
    pastLeak(
      model,
      (w) => isMeter(w) || isThrottle(w),
      (i) => leakFlow(model, i, area),
    ),
};

/** kg/s, inward positive */
export function leakFlow({ physics, assumptions }: TallyModel, i: number, area: number): number {
  return orificeMassFlow({
    dischargeCoefficient: assumptions.leakDischarge,
    area,
    upstreamPressure: physics.barometer[i]!,
    upstreamTemperature: physics.outsideTemperature[i]!,
    downstreamPressure: physics.pressure[i]!,
    downstreamTemperature: physics.intakeTemperature[i]!,
  });
}
