/**
 * An engine that fills less than it should as the flow grows: exhaust restriction, valve lift lost.
 *
 * Equation    dP = -ln(1 + s (m/m_max)^q)
 * Symbols     s relative change of volumetric efficiency at the largest flow, negative | q 1 to 2
 * Limits      vanishes at idle; under the pressure strategy the trims go rich with it
 */
import type { Law } from "../cause.ts";
import { isPressure, shiftOf } from "./prediction.ts";

export const breathingReduced: Law = {
  id: "breathing-reduced",
  applies: () => true,
  shapes: () => [
    { value: 1, weight: 0.35 },
    { value: 1.5, weight: 0.3 },
    { value: 2, weight: 0.35 },
  ],
  predict: (model, change, exponent) => {
    const { air, largestFlow } = model.physics;
    return shiftOf(
      model,
      isPressure,
      (i) => -Math.log1p(Math.max(-0.95, change * (air[i]! / largestFlow) ** exponent)),
    );
  },
};
