/**
 * Faults of the fuel side and of the probe.
 *
 * Equation    fuel-delivery-scaled   dF = -ln s
 *             fuel-unmetered         dF = ln(1 - G/fuel),  fuel = m/AFR
 *             injector-offset        dF = ln((t - d_assumed)/(t - d_true)) = -ln(1 - s/t_eff)
 *             lambda-biased          dF = ln(lambda_read/lambda) = -ln(1 - b) at lambda_read = 1
 * Symbols     s delivered/expected | G kg/s | t opening time, d dead time, t_eff = t - d_assumed, s true minus assumed dead time, s
 *             b lambda, reading minus truth
 * Limits      the first and last are constant; the others fade as the dose grows
 * Source      mass balance of fuel
 */
import { type Law, ONE_SHAPE } from "../cause.ts";
import { hasFuelControl, isFuel, shiftOf } from "./prediction.ts";

export const fuelDeliveryScaled: Law = {
  id: "fuel-delivery-scaled",
  applies: hasFuelControl,
  shapes: () => ONE_SHAPE,
  predict: (model, factor) => shiftOf(model, isFuel, () => -Math.log(factor)),
};

export const fuelUnmetered: Law = {
  id: "fuel-unmetered",
  applies: hasFuelControl,
  shapes: () => ONE_SHAPE,
  predict: (model, unmetered) => {
    const { air, stoichiometric } = model.physics;
    return shiftOf(model, isFuel, (i) => Math.log1p(-Math.min(0.9, (unmetered * stoichiometric) / air[i]!)));
  },
};

export const injectorOffset: Law = {
  id: "injector-offset",
  applies: hasFuelControl,
  shapes: () => ONE_SHAPE,
  predict: (model, lateness) => {
    const { effectivePulse } = model.physics;
    return shiftOf(model, isFuel, (i) => -Math.log1p(-Math.min(0.9, lateness / effectivePulse[i]!)));
  },
};

export const lambdaBiased: Law = {
  id: "lambda-biased",
  applies: (model) => hasFuelControl(model) && model.engine.lambdaProbe !== "none",
  shapes: () => ONE_SHAPE,
  predict: (model, bias) => shiftOf(model, isFuel, () => -Math.log1p(-bias)),
};
