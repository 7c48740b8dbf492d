/**
 * A meter that reads by one factor: wrong tube, wrong part of the same family, honeycomb gone.
 *
 * Equation    dM = ln k
 * Symbols     k reading/truth, of the sensed quantity
 */
import { type Law, ONE_SHAPE } from "../cause.ts";
import { hasMeter, isMeter, shiftOf } from "./prediction.ts";

export const meterScaled: Law = {
  id: "meter-scaled",
  applies: hasMeter,
  shapes: () => ONE_SHAPE,
  predict: (model, factor) => shiftOf(model, isMeter, () => Math.log(factor)),
};
