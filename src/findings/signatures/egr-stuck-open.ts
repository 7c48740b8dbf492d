/**
 * Exhaust gas flowing back into the manifold at all times.
 *
 * Equation    E = A p_e Psi(p/p_e) / sqrt(R T_e),  dP = ln(1 + E/m) + ln(T_c(T_mix)/T_c(T_i)),  T_mix = (m T_i + E T_e)/(m + E)
 * Symbols     A m2 effective (Cd A) | p_e, T_e exhaust pressure and temperature (assumed) | E kg/s of fresh-air equivalents |
 *             T_i K intake air, T_c charge, warmed on its way (expected-filling): the hot gas makes the fresh charge thinner too
 * Limits      largest at idle, where m is small and the pressure difference large; gone where p meets p_e
 * Source      [heywood1988] App. C; molar mass of exhaust taken as that of air (within 2 %)
 */
import { orificeMassFlow } from "../../gas/index.ts";
import { mayRecirculate } from "../../tally/index.ts";
import { type Law, ONE_SHAPE } from "../cause.ts";
import { logOfTemperature } from "./expected-filling.ts";
import { isPressure, shiftOf } from "./prediction.ts";

export const egrStuckOpen: Law = {
  id: "egr-stuck-open",
  applies: (model) => model.engine.egr === null || mayRecirculate(model.engine),
  shapes: () => ONE_SHAPE,
  predict: (model, area) => {
    const { physics, assumptions } = model;
    return shiftOf(model, isPressure, (i) => {
      if (physics.pressure[i]! >= physics.exhaustPressure[i]!) return 0;
      const recirculated = orificeMassFlow({
        dischargeCoefficient: 1,
        area,
        upstreamPressure: physics.exhaustPressure[i]!,
        upstreamTemperature: assumptions.exhaustTemperature,
        downstreamPressure: physics.pressure[i]!,
      });
      const share = recirculated / physics.air[i]!;
      const intake = physics.intakeTemperature[i]!;
      const mixed = (intake + share * assumptions.exhaustTemperature) / (1 + share);
      return Math.log1p(share) + logOfTemperature(model, i, mixed) - logOfTemperature(model, i, intake);
    });
  },
};
