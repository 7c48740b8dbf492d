/** Small builders shared by the signatures. */
import type { TallyModel, TallyWitness } from "../../tally/index.ts";
import type { Prediction } from "../cause.ts";

/** A shift of some witnesses, point by point, that leaves their response to air as it is. */
export function shiftOf(
  model: TallyModel,
  which: (w: TallyWitness) => boolean,
  effect: (i: number) => number,
  standing: readonly number[] = [],
): Prediction {
  const w = model.witnesses.length;
  const out = new Float64Array(model.points.length * w);
  for (let j = 0; j < w; j++) {
    if (!which(model.witnesses[j]!)) continue;
    for (let i = 0; i < model.points.length; i++) if (model.present[i * w + j] === 1) out[i * w + j] = effect(i);
  }
  for (const bound of model.bounds)
    if (which(model.witnesses[bound.witness]!)) out[bound.point * w + bound.witness] = effect(bound.point);
  return { effect: out, response: null, logAir: null, standing: model.standing.map((_, i) => standing[i] ?? 0) };
}

/**
 * A meter that reads `reading(i)` where the air into the cylinders is `air(i)`: effect ln(reading/air), and its response
 * d ln(reading)/d ln(air), both at the air that the reading itself implies under this fault.
 */
export function meterReads(
  model: TallyModel,
  at: (i: number, metered: number) => { readonly air: number; readonly response: number },
): Prediction {
  const w = model.witnesses.length;
  const k = model.points.length;
  const effect = new Float64Array(k * w);
  const response = new Float64Array(k * w).fill(1);
  const logAir = new Float64Array(k);
  for (let i = 0; i < k; i++) {
    for (let j = 0; j < w; j++) {
      const id = model.witnesses[j]!;
      if ((id !== "meter" && id !== "meter-2") || model.present[i * w + j] === 0) continue;
      const metered = model.physics.meter[id]![i]!;
      const { air, response: a } = at(i, metered);
      effect[i * w + j] = Math.log(metered / air);
      response[i * w + j] = a;
      logAir[i] = Math.log(air);
    }
  }
  return { effect, response, logAir, standing: model.standing.map(() => 0) };
}

export const isMeter = (w: TallyWitness): boolean => w === "meter" || w === "meter-2";
export const isFuel = (w: TallyWitness): boolean => w.startsWith("fuel");
export const isPressure = (w: TallyWitness): boolean => w === "pressure";

/** The engine carries an air meter: named in the engine file, dosed by, or recorded. */
export function hasMeter(model: TallyModel): boolean {
  const { metering, meters } = model.engine;
  return meters.length > 0 || metering === "meter" || metering === "both" || model.witnesses.some(isMeter);
}

export function hasPressureSensor(model: TallyModel): boolean {
  const { metering, manifoldSensor } = model.engine;
  return manifoldSensor !== null || metering === "pressure" || metering === "both" || model.witnesses.some(isPressure);
}

/** Fuel is corrected by lambda: trims exist. A diesel doses by the pedal and has none. */
export function hasFuelControl(model: TallyModel): boolean {
  return model.engine.ignition === "spark";
}
