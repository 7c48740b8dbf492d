/**
 * A barometer that reads beside the truth.
 *
 * Equation    dM = k ln(p_read/(p_read - b)), k of meters/sensed-density, where the meter's mass is corrected for pressure
 *             dP = s ln(f(p_e/p)/f((p_e - b)/p)): the residual gas expected of a wrong exhaust pressure
 *             dH of throttle-witness at b less before it, unless that pressure is read itself
 *             standing: p - p_a reads -b, the drop at full load b
 * Symbols     b Pa, reading minus truth | f residual gas of the ideal cycle, s its strength | p_e exhaust pressure, from the barometer up
 * Limits      all of it on a vortex meter, half on a vane that is corrected for pressure (not all are: two forms), none on wire and
 *             film; about a hundredth on the pressure witness at idle
 * Assumes     a computer that doses by pressure uses the same barometer for its table, so that its trims undo it
 */
import { sensedDensityExponent } from "../../meters/index.ts";
import { findReading } from "../../tally/index.ts";
import type { Law } from "../cause.ts";
import { logOfPressure } from "./expected-filling.ts";
import { isMeter, isPressure, isThrottle, recordsBarometer, shiftsOf } from "./prediction.ts";
import { throttleByUpstream } from "./throttle-witness.ts";

const CORRECTED = 0;
const UNCORRECTED = 1;

export const baroBiased: Law = {
  id: "baro-biased",
  applies: (model) => recordsBarometer(model) || model.engine.meters.some((m) => sensedDensityExponent(m.kind) > 0),
  shapes: ({ engine }) =>
    engine.meters.some((m) => m.kind === "vane")
      ? [
          { value: CORRECTED, weight: 0.4 },
          { value: UNCORRECTED, weight: 0.6 },
        ]
      : [{ value: CORRECTED, weight: 1 }],
  predict: (model, bias, correction) => {
    const { engine, physics, points } = model;
    const recorded = recordsBarometer(model);
    const kind = engine.meters[0]?.kind;
    const exponent = kind === undefined || correction === UNCORRECTED ? 0 : sensedDensityExponent(kind);
    const truth = (i: number) => Math.max(physics.barometer[i]! - bias, 0.3 * physics.barometer[i]!);
    return shiftsOf(
      model,
      [
        [
          // Only where the computer made the mass, or a barometer was recorded to make it with.
          (w) => isMeter(w) && exponent > 0,
          (i) =>
            recorded || findReading(points[i]!, "meterFlow", null) !== null
              ? exponent * Math.log(physics.barometer[i]! / truth(i))
              : 0,
        ],
        [
          (w) => isPressure(w) && recorded,
          (i) => {
            const exhaust = physics.exhaustPressure[i]!;
            const pressure = physics.pressure[i]!;
            return logOfPressure(model, pressure, exhaust) - logOfPressure(model, pressure, exhaust - bias);
          },
        ],
        [(w) => isThrottle(w) && recorded, (i) => throttleByUpstream(model, i, physics.barometer[i]! - truth(i))],
      ],
      ({ kind: standing }) => {
        if (!recorded) return 0;
        if (standing === "pressure-against-barometer") return -bias / 1000;
        return standing === "full-load-pressure-drop" ? bias / 1000 : 0;
      },
    );
  },
};
