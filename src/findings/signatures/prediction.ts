/** Small builders shared by the signatures. */
import { findReading, type StandingObservation, type TallyModel, type TallyWitness } from "../../tally/index.ts";
import type { Prediction } from "../cause.ts";

/** Shift of a standing observation, in its own unit. */
export type StandingShift = (observation: StandingObservation) => number;

/** A shift of some witnesses, point by point, that leaves their response to air as it is. */
export function shiftOf(
  model: TallyModel,
  which: (w: TallyWitness) => boolean,
  effect: (i: number) => number,
  standing: StandingShift = () => 0,
): Prediction {
  return shiftsOf(model, [[which, effect]], standing);
}

/** The same where different witnesses shift differently; of several that name a witness, the first counts. */
export function shiftsOf(
  model: TallyModel,
  parts: readonly (readonly [which: (w: TallyWitness) => boolean, effect: (i: number) => number])[],
  standing: StandingShift = () => 0,
): Prediction {
  const w = model.witnesses.length;
  const out = new Float64Array(model.points.length * w);
  const effects = model.witnesses.map((id) => parts.find(([which]) => which(id))?.[1]);
  for (let j = 0; j < w; j++) {
    const effect = effects[j];
    if (effect === undefined) continue;
    for (let i = 0; i < model.points.length; i++) if (model.present[i * w + j] === 1) out[i * w + j] = effect(i);
  }
  for (const { point, witness } of model.bounds) {
    const effect = effects[witness];
    if (effect !== undefined) out[point * w + witness] = effect(point);
  }
  return { effect: out, response: null, logAir: null, standing: model.standing.map(standing) };
}

/**
 * A meter that reads `reading(i)` where the air into the cylinders is `air(i)`: effect ln(reading/air), and its response
 * d ln(reading)/d ln(air), both at the air that the reading itself implies under this fault.
 */
export function meterReads(
  model: TallyModel,
  at: (i: number, metered: number, meter: "meter" | "meter-2") => { readonly air: number; readonly response: number },
  standing: StandingShift = () => 0,
): Prediction {
  const w = model.witnesses.length;
  const k = model.points.length;
  const effect = new Float64Array(k * w);
  const response = new Float64Array(k * w).fill(1);
  const logAir = new Float64Array(k);
  const heard = heardRows(model);
  for (let i = 0; i < k; i++) {
    for (let j = 0; j < w; j++) {
      const id = model.witnesses[j]!;
      if (!isMeter(id) || heard[i * w + j] === 0) continue;
      const metered = model.physics.meter[id]![i]!;
      const { air, response: a } = at(i, metered, id);
      effect[i * w + j] = Math.log(metered / air);
      response[i * w + j] = a;
      logAir[i] = Math.log(air);
    }
  }
  return { effect, response, logAir, standing: model.standing.map(standing) };
}

/** an outward leak can't exceed what the meter reads, nor an inward one the air of the engine */
const MOST_LEAKED = 0.9;

/**
 * Witnesses that see the air less a leak: ln((m - L)/m), and their response m/(m - L). The air m is what the meter read and
 * the leak, else the rough air of the point.
 */
export function pastLeak(
  model: TallyModel,
  which: (w: TallyWitness) => boolean,
  leak: (i: number) => number,
): Prediction {
  const w = model.witnesses.length;
  const k = model.points.length;
  const effect = new Float64Array(k * w);
  const response = new Float64Array(k * w).fill(1);
  const logAir = new Float64Array(k);
  const heard = heardRows(model);
  for (let i = 0; i < k; i++) {
    const inward = leak(i);
    const metered = meteredAt(model, heard, i);
    const passing = metered ?? Math.max(model.physics.air[i]! - inward, (1 - MOST_LEAKED) * model.physics.air[i]!);
    const air = Math.max(passing + inward, (1 - MOST_LEAKED) * passing);
    logAir[i] = Math.log(air);
    for (let j = 0; j < w; j++) {
      const id = model.witnesses[j]!;
      if (heard[i * w + j] === 0 || !which(id)) continue;
      const own = (isMeter(id) ? model.physics.meter[id]?.[i] : undefined) ?? passing;
      const all = Math.max(own + inward, (1 - MOST_LEAKED) * own);
      effect[i * w + j] = Math.log(own / all);
      response[i * w + j] = all / own;
    }
  }
  return { effect, response, logAir, standing: model.standing.map(() => 0) };
}

function meteredAt({ witnesses, physics }: TallyModel, heard: Uint8Array, i: number): number | null {
  for (let j = 0; j < witnesses.length; j++) {
    const id = witnesses[j]!;
    if (isMeter(id) && heard[i * witnesses.length + j] === 1) return physics.meter[id]![i]!;
  }
  return null;
}

/** K*W: 1 where the witness speaks, if only by a bound. */
function heardRows({ present, bounds, witnesses }: TallyModel): Uint8Array {
  if (bounds.length === 0) return present;
  const rows = present.slice();
  for (const { point, witness } of bounds) rows[point * witnesses.length + witness] = 1;
  return rows;
}

export const isMeter = (w: TallyWitness): w is "meter" | "meter-2" => w === "meter" || w === "meter-2";
/** the fuel side as the control probe closes it */
export const isFuel = (w: TallyWitness): boolean => w.startsWith("fuel");
/** all that weighs air by the fuel that met it, whichever probe looks */
export const isFuelSide = (w: TallyWitness): boolean => isFuel(w) || w === "exhaust";
export const isPressure = (w: TallyWitness): boolean => w === "pressure";
export const isThrottle = (w: TallyWitness): boolean => w === "throttle";

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

/** Blown by a charger: said so, or seen in the manifold. */
export function isBoosted({ engine, physics }: TallyModel): boolean {
  if (engine.induction !== null) return engine.induction === "boosted";
  return physics.pressure.some((p, i) => p > 1.1 * physics.barometer[i]!);
}

/** A barometer was read while running, and not only assumed. */
export function recordsBarometer({ points }: TallyModel): boolean {
  return points.some((point) => findReading(point, "barometer", null) !== null);
}

/** lambda of the mixture at a point: as read, else as commanded, else stoichiometric */
export function lambdaAt({ points }: TallyModel, i: number): number {
  const point = points[i]!;
  const reading =
    findReading(point, "lambda", null) ??
    findReading(point, "lambdaIndependent", null) ??
    findReading(point, "lambdaCommanded", null);
  return reading !== null && reading.mean > 0.5 && reading.mean < 2 ? reading.mean : 1;
}

/** The air by which a computer that doses by pressure dosed is the tally's own reckoning: no word of it, nor of the injectors. */
export function dosedByTable({ points, engine }: TallyModel, i: number): boolean {
  const point = points[i]!;
  const injectors = engine.injectors !== null && engine.injectors.flow !== null && engine.injectors.atPressure !== null;
  return (
    engine.metering === "pressure" &&
    findReading(point, "airPerStroke", null) === null &&
    !(injectors && findReading(point, "pulseWidth", null) !== null)
  );
}

/** kg/s of fuel that the air of a point needs at its mixture */
export function fuelAt(model: TallyModel, i: number): number {
  return model.physics.air[i]! / (model.physics.stoichiometric * lambdaAt(model, i));
}

/** 0 below `from`, 1 above `to`, straight between */
export function ramp(x: number, from: number, to: number): number {
  return Math.min(1, Math.max(0, (x - from) / (to - from)));
}
