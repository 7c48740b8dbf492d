/**
 * A hole in the pipe between compressor and throttle.
 *
 * Equation    M = m + L,  L = Cd A p_1 Psi(p_a/p_1) / sqrt(R T_1) outward, where p_1 > p_a;  dM = ln((m + L)/m)
 * Symbols     M metered, m into the cylinders, L kg/s | A m2 | Cd 0.65, sharp-edged | p_1 Pa, T_1 K before the throttle: as recorded, else
 *             the manifold's, with the throttle open under boost | p_a ambient
 * Limits      nothing without boost: then the pipe stands near ambient; the throttle, behind the hole, stays true
 * Source      [heywood1988] App. C
 */
import { orificeMassFlow } from "../../gas/index.ts";
import { findReading } from "../../tally/index.ts";
import { type Law, ONE_SHAPE } from "../cause.ts";
import { hasMeter, isBoosted, isMeter, pastLeak } from "./prediction.ts";

export const boostLeak: Law = {
  id: "boost-leak",
  applies: (model) => isBoosted(model) && hasMeter(model),
  shapes: () => ONE_SHAPE,
  predict: (model, area) => {
    const { physics, assumptions, points } = model;
    return pastLeak(model, isMeter, (i) => {
      const boost = findReading(points[i]!, "boostPressure", null)?.mean ?? physics.pressure[i]!;
      if (!(boost > physics.barometer[i]!)) return 0;
      return -orificeMassFlow({
        dischargeCoefficient: assumptions.leakDischarge,
        area,
        upstreamPressure: boost,
        upstreamTemperature: physics.intakeTemperature[i]!,
        downstreamPressure: physics.barometer[i]!,
      });
    });
  },
};
