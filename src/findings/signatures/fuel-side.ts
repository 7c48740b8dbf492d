/**
 * Faults of the fuel side and of the probe.
 *
 * Equation    fuel-delivery-scaled   dF = -ln s
 *             fuel-composition       dF = -ln k
 *             fuel-unmetered         dF = ln(1 - G/fuel),  fuel = m/(AFR lambda); as purge also dM = dH = ln(1 - g G/m)
 *             injector-offset        dF = ln((t - d_assumed)/(t - d_true)) = -ln(1 - s/t_eff)
 *             lambda-biased          dF = ln(lambda_read/lambda) = -ln(1 - b/lambda_read)
 * Symbols     s delivered/expected | k stoichiometric air-fuel ratio, true/assumed | G kg/s, g kg of air that comes with a kg of purged fuel
 *             | t opening time, d dead time, t_eff = t - d_assumed, s true minus assumed dead time, s | b lambda, reading minus truth
 * Limits      the first two and, in closed loop, the last are constant; the others fade as the dose grows. A wrong control probe does
 *             not move what an independent probe sees ("exhaust"); all others do
 * Source      mass balance of fuel; g common practice, no source
 */
import type { TallyModel } from "../../tally/index.ts";
import { type Law, ONE_SHAPE } from "../cause.ts";
import { least, MOST_SHARE } from "./most-share.ts";
import {
  fuelAt,
  hasFuelControl,
  isFuel,
  isFuelSide,
  isMeter,
  isThrottle,
  lambdaAt,
  shiftOf,
  shiftsOf,
} from "./prediction.ts";

export const fuelDeliveryScaled: Law = {
  id: "fuel-delivery-scaled",
  applies: hasFuelControl,
  shapes: () => ONE_SHAPE,
  predict: (model, factor) => shiftOf(model, isFuelSide, () => -Math.log(factor)),
};

export const fuelComposition: Law = {
  id: "fuel-composition",
  applies: hasFuelControl,
  shapes: () => ONE_SHAPE,
  predict: (model, ratio) => shiftOf(model, isFuelSide, () => -Math.log(ratio)),
};

const FUEL_ALONE = 0;
const PURGE = 1;
/** g: purge gas is richer than any mixture that burns */
const AIR_WITH_PURGE = 3;

export const fuelUnmetered: Law = {
  id: "fuel-unmetered",
  applies: hasFuelControl,
  shapes: ({ engine, witnesses }) =>
    engine.purge === "none" || !witnesses.some((w) => isMeter(w) || isThrottle(w))
      ? [{ value: FUEL_ALONE, weight: 1 }]
      : [
          { value: FUEL_ALONE, weight: 0.6 },
          { value: PURGE, weight: 0.4 },
        ],
  /** some fuel comes from the injectors */
  most: (model) => MOST_SHARE * least(model.points.map((_, i) => fuelAt(model, i))),
  predict: (model, unmetered, source) => {
    const onFuel = (i: number) => Math.log1p(-Math.min(0.9, unmetered / fuelAt(model, i)));
    if (source === FUEL_ALONE) return shiftOf(model, isFuelSide, onFuel);
    const { air } = model.physics;
    const onAir = (i: number) => Math.log1p(-Math.min(0.9, (AIR_WITH_PURGE * unmetered) / air[i]!));
    const purged = (effect: (i: number) => number) => (i: number) => (belowAmbient(model, i) ? effect(i) : 0);
    return shiftsOf(model, [
      [isFuelSide, purged(onFuel)],
      [(w) => isMeter(w) || isThrottle(w), purged(onAir)],
    ]);
  },
};

/** A purge line flows into a manifold below ambient only. */
function belowAmbient({ physics }: TallyModel, i: number): boolean {
  return physics.pressure[i]! < physics.barometer[i]!;
}

export const injectorOffset: Law = {
  id: "injector-offset",
  applies: hasFuelControl,
  shapes: () => ONE_SHAPE,
  /** the injector opens */
  most: ({ physics }, sign) => (sign > 0 ? MOST_SHARE * least(physics.effectivePulse) : Infinity),
  predict: (model, lateness) => {
    const { effectivePulse } = model.physics;
    return shiftOf(model, isFuelSide, (i) => -Math.log1p(-Math.min(0.9, lateness / effectivePulse[i]!)));
  },
};

export const lambdaBiased: Law = {
  id: "lambda-biased",
  applies: (model) => hasFuelControl(model) && model.engine.lambdaProbe !== "none",
  shapes: () => ONE_SHAPE,
  predict: (model, bias) => shiftOf(model, isFuel, (i) => -Math.log1p(-Math.min(0.9, bias / lambdaAt(model, i)))),
};
