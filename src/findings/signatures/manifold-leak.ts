/**
 * A hole in the manifold.
 *
 * Equation    M = m - L,  L = Cd A p_a Psi(p/p_a) / sqrt(R T_a) inward below ambient; outward above it
 *             dM = ln((m - L)/m),  d ln M/d ln m = m/(m - L)
 * Symbols     M metered, m into the cylinders, L leak, kg/s | A m2 | Cd 0.65, sharp-edged | p manifold, p_a ambient, Pa
 * Limits      choked at idle (constant L), gone at full load; on a boosted engine the sign turns under boost
 *             no trim moves where the computer doses by pressure: the sensor sees what entered
 * Source      [heywood1988] App. C
 */
import { orificeMassFlow } from "../../gas/index.ts";
import type { TallyModel } from "../../tally/index.ts";
import { type Law, ONE_SHAPE } from "../cause.ts";
import { hasMeter, meterReads } from "./prediction.ts";

/** an outward leak can't exceed what the meter reads */
const MOST_OUTWARD = 0.9;

export const manifoldLeak: Law = {
  id: "manifold-leak",
  applies: (model) => hasMeter(model) || model.witnesses.includes("pressure"),
  shapes: () => ONE_SHAPE,
  predict: (model, area) =>
    meterReads(model, (i, metered) => {
      const leak = leakFlow(model, i, area);
      const air = leak >= 0 ? metered + leak : Math.max(metered + leak, (1 - MOST_OUTWARD) * metered);
      return { air, response: air / metered };
    }),
};

/** kg/s, inward positive */
function leakFlow(model: TallyModel, i: number, area: number): number {
  const { physics, assumptions } = model;
  return orificeMassFlow({
    dischargeCoefficient: assumptions.leakDischarge,
    area,
    upstreamPressure: physics.barometer[i]!,
    upstreamTemperature: physics.outsideTemperature[i]!,
    downstreamPressure: physics.pressure[i]!,
    downstreamTemperature: physics.intakeTemperature[i]!,
  });
}
