/**
 * A manifold pressure sensor with a wrong zero.
 *
 * Equation    p_read = p + b,  dP = ln(p_read/(p_read - b)); standing: p_read - p_a = b
 * Symbols     b Pa, reading minus truth
 * Limits      strongest at low pressure; seen with key on, engine off
 */
import { type Law, ONE_SHAPE } from "../cause.ts";
import { hasPressureSensor, isPressure, shiftOf } from "./prediction.ts";

export const mapBiased: Law = {
  id: "map-biased",
  applies: hasPressureSensor,
  shapes: () => ONE_SHAPE,
  predict: (model, offset) => {
    const { pressure } = model.physics;
    const truth = (i: number) => Math.max(pressure[i]! - offset, 0.1 * pressure[i]!);
    return shiftOf(
      model,
      isPressure,
      (i) => Math.log(pressure[i]! / truth(i)),
      model.standing.map(() => offset / 1000),
    );
  },
};
