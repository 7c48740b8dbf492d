/**
 * A hole in the pipe between compressor and throttle.
 *
 * Equation    M = m + L,  L = Cd A p_1 Psi(p_a/p_1) / sqrt(R T_1) outward, where p_1 > p_a; inward where the pipe stands below ambient
 *             by the loss of the filter, before a charger at rest;  dM = ln((m + L)/m)
 * Symbols     M metered, m into the cylinders, L kg/s | A m2 | Cd 0.65, sharp-edged | p_1 Pa before the throttle (pipe-pressure.ts),
 *             T_1 K as in the manifold | p_a ambient
 * Limits      grows with boost, also before a part-open throttle with a manifold below ambient; the throttle, behind the hole, stays true
 * Source      [heywood1988] App. C
 */
import { orificeMassFlow } from "../../gas/index.ts";
import { type Law, ONE_SHAPE } from "../cause.ts";
import { pipePressure } from "./pipe-pressure.ts";
import { hasMeter, isBoosted, isMeter, pastLeak } from "./prediction.ts";

export const boostLeak: Law = {
  id: "boost-leak",
  applies: (model) => isBoosted(model) && hasMeter(model),
  shapes: () => ONE_SHAPE,
  predict: (model, area) => {
    const { physics, assumptions } = model;
    const inward = (i: number, pipe: number) =>
      orificeMassFlow({
        dischargeCoefficient: assumptions.leakDischarge,
        area,
        upstreamPressure: physics.barometer[i]!,
        upstreamTemperature: physics.outsideTemperature[i]!,
        downstreamPressure: pipe,
        downstreamTemperature: physics.intakeTemperature[i]!,
      });
    const pipe = pipePressure(model, (i, pressure) => -inward(i, pressure));
    return pastLeak(model, isMeter, (i) => inward(i, pipe[i]!));
  },
};
