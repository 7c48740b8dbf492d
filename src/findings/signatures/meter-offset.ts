/**
 * Signal added to or lost from the meter's reading: ground drop, leakage current, supply.
 *
 * Equation    M = m + b (m/m_idle)^q,  dM = ln(M/m),  d ln M/d ln m = (m + q (M - m))/M
 * Symbols     b kg/s at idle flow, reading minus truth | q 0 for an offset of flow itself; for an offset of voltage on a hot
 *             element E ~ m^(1/4) the flow error grows with about m^(3/4), between for other curves
 * Limits      strongest at low flow, whatever the pressure
 */
import type { Law } from "../cause.ts";
import { hasMeter, meterReads } from "./prediction.ts";

export const meterOffset: Law = {
  id: "meter-offset",
  applies: hasMeter,
  shapes: () => [
    { value: 0, weight: 0.5 },
    { value: 0.6, weight: 0.5 },
  ],
  predict: (model, offset, exponent) =>
    meterReads(model, (_, metered) => {
      const idle = model.physics.idleFlow;
      let air = metered;
      // Fixed point of m = M - b (m/m_idle)^q: the error changes slowly with m, so a few steps settle it.
      for (let n = 0; n < 6; n++)
        air = Math.max(metered - offset * (Math.max(air, 0.02 * idle) / idle) ** exponent, 0.1 * metered);
      return { air, response: (air + exponent * (metered - air)) / metered };
    }),
};
