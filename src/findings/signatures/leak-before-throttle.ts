/**
 * A hole between meter and throttle, where the pressure is below ambient by the drop of filter and duct.
 *
 * Equation    L = Cd A sqrt(2 rho dp),  dp = dp_max (m/m_max)^2, so L/m = Cd A sqrt(2 rho dp_max)/m_max: one factor
 *             dM = ln(1 - L/m)
 * Symbols     A m2 | dp Pa drop before the hole, dp_max at the largest flow (assumed) | rho kg/m3
 * Limits      a constant ratio: not to be told from a meter that reads low by one factor
 * Source      incompressible orifice [heywood1988] App. C for small drops
 */
import { dryAirDensity } from "../../gas/index.ts";
import { type Law, ONE_SHAPE } from "../cause.ts";
import { hasMeter, isMeter, shiftOf } from "./prediction.ts";

export const leakBeforeThrottle: Law = {
  id: "leak-before-throttle",
  applies: hasMeter,
  shapes: () => ONE_SHAPE,
  predict: (model, area) => {
    const { physics, assumptions } = model;
    return shiftOf(model, isMeter, (i) => {
      const density = dryAirDensity(physics.barometer[i]!, physics.intakeTemperature[i]!);
      const share =
        (assumptions.leakDischarge * area * Math.sqrt(2 * density * assumptions.ductDrop)) / physics.largestFlow;
      // a share near one would leave the meter nothing to read
      return Math.log1p(-Math.min(share, 0.95));
    });
  },
};
