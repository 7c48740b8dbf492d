/**
 * An intake air temperature that is not the air's.
 *
 * Equation    dP = -ln(T_read/(T_read - b_i)),  b_i = b (m_idle/m)^(q/2)
 *             where a vane or vortex meter's mass is made with it: dM = -1/2 or -1 of the same
 * Symbols     b K at idle, reading minus truth | q 0 a constant error, 1 heat soak that the flow carries away
 */
import { sensedDensityExponent } from "../../meters/index.ts";
import type { TallyModel } from "../../tally/index.ts";
import type { Law } from "../cause.ts";
import { isMeter, isPressure, shiftOf } from "./prediction.ts";

export const intakeTemperatureBiased: Law = {
  id: "intake-temperature-biased",
  applies: (model) => model.witnesses.some((w) => isPressure(w) || (isMeter(w) && densityExponent(model) > 0)),
  shapes: () => [
    { value: 0, weight: 0.6 },
    { value: 1, weight: 0.4 },
  ],
  predict: (model, bias, soak) => {
    const { intakeTemperature, idleFlow, air } = model.physics;
    const onPressure = (i: number) => {
      const error = bias * Math.min(1, idleFlow / Math.max(air[i]!, 1e-9)) ** (soak / 2);
      return -Math.log(intakeTemperature[i]! / Math.max(intakeTemperature[i]! - error, 100));
    };
    const pressure = shiftOf(model, isPressure, onPressure);
    const exponent = densityExponent(model);
    if (exponent === 0 || model.engine.intakeTemperatureAt === "manifold") return pressure;
    const meter = shiftOf(model, isMeter, (i) => exponent * onPressure(i));
    return { ...pressure, effect: pressure.effect.map((v, i) => v + meter.effect[i]!) };
  },
};

function densityExponent(model: TallyModel): number {
  const meter = model.engine.meters[0];
  return meter === undefined ? 0 : sensedDensityExponent(meter.kind);
}
