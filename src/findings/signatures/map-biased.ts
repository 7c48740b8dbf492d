/**
 * A manifold pressure sensor with a wrong zero.
 *
 * Equation    p_read = p + b,  dP = ln(p_read/(p_read - b)); standing: p_read - p_a = b, and the drop at full load is -b short
 * Symbols     b Pa, reading minus truth
 * Limits      strongest at low pressure; seen with key on, engine off
 */
import { type Law, ONE_SHAPE } from "../cause.ts";
import { least, MOST_SHARE } from "./most-share.ts";
import { hasPressureSensor, isPressure, shiftOf } from "./prediction.ts";

export const mapBiased: Law = {
  id: "map-biased",
  applies: hasPressureSensor,
  shapes: () => ONE_SHAPE,
  /** a reading holds some truth */
  most: ({ physics }, sign) => (sign > 0 ? MOST_SHARE * least(physics.pressure) : Infinity),
  predict: (model, offset) => {
    const { pressure } = model.physics;
    const truth = (i: number) => Math.max(pressure[i]! - offset, 0.1 * pressure[i]!);
    return shiftOf(
      model,
      isPressure,
      (i) => Math.log(pressure[i]! / truth(i)),
      ({ kind }) => {
        if (kind === "pressure-against-barometer") return offset / 1000;
        return kind === "full-load-pressure-drop" ? -offset / 1000 : 0;
      },
    );
  },
};
