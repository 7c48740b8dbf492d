/**
 * A hole between meter and throttle, where the pressure is below ambient by the drop of filter and duct.
 *
 * Equation    L = Cd A sqrt(2 rho dp),  dp = f dp_max (M/M_max)^2, so L/M = Cd A sqrt(2 rho f dp_max)/M_max: one ratio r
 *             M = m - L:  dM = -ln(1 + r)
 * Symbols     A m2 | dp Pa drop before the hole, made by what passes the filter; dp_max at the largest flow (assumed), f how many times
 *             that it really is (a grid) | rho kg/m3
 * Limits      a constant ratio: not to be told from a meter that reads low by one factor
 * Source      incompressible orifice [heywood1988] App. C for small drops; range of f common practice, no source
 */
import { dryAirDensity } from "../../gas/index.ts";
import type { Law } from "../cause.ts";
import { hasMeter, isMeter, shiftOf } from "./prediction.ts";

export const leakBeforeThrottle: Law = {
  id: "leak-before-throttle",
  applies: hasMeter,
  shapes: () => [
    { value: 1, weight: 0.5 },
    { value: 0.5, weight: 0.25 },
    { value: 2, weight: 0.25 },
  ],
  predict: (model, area, dropFactor) => {
    const { physics, assumptions } = model;
    const drop = dropFactor * assumptions.ductDrop;
    return shiftOf(model, isMeter, (i) => {
      const density = dryAirDensity(physics.barometer[i]!, physics.intakeTemperature[i]!);
      return -Math.log1p((assumptions.leakDischarge * area * Math.sqrt(2 * density * drop)) / physics.largestFlow);
    });
  },
};
