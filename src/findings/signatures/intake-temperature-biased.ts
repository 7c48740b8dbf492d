/**
 * An intake air temperature that is not the air's.
 *
 * Equation    dP = -ln(T_c(T_read)/T_c(T_read - b_i)),  b_i = b (m_idle/m)^(q/2)
 *             where a vane or vortex meter's mass is made with it: dM = -1/2 or -1 of the same
 *             the throttle witness goes by the root of the density: dH = half of it
 *             where it was not recorded, the pressure witness is free of it, and a computer that doses by pressure is not: dF = -dP
 *             standing, cold soak: b, of a constant error only
 * Symbols     T_c K charge, of which the tally expects that it warms on its way (expected-filling): at idle about half of an error is
 *             left, at full load nearly all | b K at idle, reading minus truth | q 0 a constant error, 1 heat soak that the flow carries away
 */
import { sensedDensityExponent } from "../../meters/index.ts";
import { findReading, type TallyModel } from "../../tally/index.ts";
import type { Law } from "../cause.ts";
import { logOfTemperature } from "./expected-filling.ts";
import { dosedByTable, isFuelSide, isMeter, isPressure, isThrottle, shiftsOf } from "./prediction.ts";

const CONSTANT = 0;
const HEAT_SOAK = 1;

export const intakeTemperatureBiased: Law = {
  id: "intake-temperature-biased",
  applies: (model) =>
    model.witnesses.some((w) => isPressure(w) || (isMeter(w) && densityExponent(model) > 0)) ||
    model.engine.metering === "pressure",
  shapes: () => [
    { value: CONSTANT, weight: 0.6 },
    { value: HEAT_SOAK, weight: 0.4 },
  ],
  predict: (model, bias, soak) => {
    const { intakeTemperature, idleFlow, air } = model.physics;
    const truth = (i: number) => {
      const error = bias * Math.min(1, idleFlow / Math.max(air[i]!, 1e-9)) ** (soak / 2);
      return Math.max(intakeTemperature[i]! - error, 100);
    };
    const onDensity = (i: number) => -Math.log(intakeTemperature[i]! / truth(i));
    const onCharge = (i: number) =>
      logOfTemperature(model, i, truth(i)) - logOfTemperature(model, i, intakeTemperature[i]!);
    const exponent = model.engine.intakeTemperatureAt === "manifold" ? 0 : densityExponent(model);
    const recorded = recordsTemperature(model);
    const hidden = !recorded && model.engine.metering === "pressure";
    return shiftsOf(
      model,
      [
        [(w) => isPressure(w) && recorded, onCharge],
        [(w) => isMeter(w) && exponent > 0, (i) => exponent * onDensity(i)],
        [(w) => isThrottle(w) && recorded, (i) => 0.5 * onDensity(i)],
        [(w) => isFuelSide(w) && hidden, (i) => (dosedByTable(model, i) ? -onCharge(i) : 0)],
      ],
      ({ kind }) => (kind === "intake-temperature-at-cold-soak" && soak === CONSTANT ? bias : 0),
    );
  },
};

function densityExponent(model: TallyModel): number {
  const meter = model.engine.meters[0];
  return meter === undefined ? 0 : sensedDensityExponent(meter.kind);
}

function recordsTemperature({ points }: TallyModel): boolean {
  return points.some(
    (p) => (findReading(p, "chargeTemperature", null) ?? findReading(p, "intakeTemperature", null)) !== null,
  );
}
