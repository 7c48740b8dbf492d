/**
 * A manifold pressure sensor with a wrong zero.
 *
 * Equation    p_read = p + b,  dP = ln(p_read/(p_read - b)), and by the residual gas expected at p_read (expected-filling); standing: p_read - p_a = b, and the drop at full load is b short (unless the sensor is its own barometer)
 *             the throttle witness, made with p: dH of throttle-witness, nothing while choked
 * Symbols     b Pa, reading minus truth
 * Limits      strongest at low pressure; seen with key on, engine off
 */
import { type Law, ONE_SHAPE } from "../cause.ts";
import { logOfPressure } from "./expected-filling.ts";
import { least, MOST_SHARE } from "./most-share.ts";
import { hasPressureSensor, isPressure, isThrottle, shiftsOf } from "./prediction.ts";
import { throttleByPressure } from "./throttle-witness.ts";

export const mapBiased: Law = {
  id: "map-biased",
  applies: hasPressureSensor,
  shapes: () => ONE_SHAPE,
  /** a reading holds some truth */
  most: ({ physics }, sign) => (sign > 0 ? MOST_SHARE * least(physics.pressure) : Infinity),
  predict: (model, offset) => {
    const { pressure, exhaustPressure } = model.physics;
    const truth = (i: number) => Math.max(pressure[i]! - offset, 0.1 * pressure[i]!);
    const onPressure = (i: number) =>
      logOfPressure(model, pressure[i]!, exhaustPressure[i]!) - logOfPressure(model, truth(i), exhaustPressure[i]!);
    return shiftsOf(
      model,
      [
        [isPressure, onPressure],
        [isThrottle, (i) => throttleByPressure(model, i, truth(i))],
      ],
      ({ kind, ownBarometer }) => {
        if (kind === "pressure-against-barometer") return offset / 1000;
        return kind === "full-load-pressure-drop" && ownBarometer !== true ? -offset / 1000 : 0;
      },
    );
  },
};
