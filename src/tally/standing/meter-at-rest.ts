/**
 * With the engine standing no air flows: the meter's raw signal must be that of its curve at zero flow, and a reported flow none.
 *
 * Equation    V or ratio:  S - S(0) = d + error,  sd^2 = tolerance^2 + (S(draught) - S(0))^2
 *             g/s:         M = b + error
 * Symbols     S(m) the curve's signal at a flow | d, b offset of signal, of flow | draught kg/s of air that moves by itself through a
 *             standing intake: a heated element hears it, its curve being steepest there
 * Limits      no statement where the curve has no point at zero flow; none from a reported flow of zero, nor from one that only
 *             repeats the first point of the curve: engine computers clip what lies below
 * Source      common practice, no source
 */
import type { KeyOnReading } from "../../channels/index.ts";
import type { Assumptions } from "../assumptions.ts";
import type { MeterSlot } from "../meter-slots.ts";
import { RAW_SIGNAL } from "../readings.ts";
import type { StandingObservation } from "../tally-model.ts";
import { placeOf } from "./place-of.ts";

/** kg/s; a reported flow no larger is a zero: two steps of SAE J1979 */
const ZERO = 2e-5;
/** share of the largest flow of a curve below which its first point counts as zero flow */
const NO_FLOW = 0.001;

export function meterAtRest(
  keyOn: readonly KeyOnReading[],
  slots: readonly MeterSlot[],
  a: Assumptions,
  basis: Float64Array,
): StandingObservation[] {
  return slots.flatMap((slot) => {
    const found = keyOn.map((reading) => signalAtRest(reading, slot, a) ?? flowAtRest(reading, slot, a));
    // One meter at rest is one fact: the passage that says it best.
    const best = found.reduce((a, b) => (a === null || (b !== null && b.variance < a.variance) ? b : a), null);
    return best === null ? [] : [{ kind: "meter-at-zero-flow" as const, meter: slot.id, basis, ...best }];
  });
}

type AtRest = Pick<StandingObservation, "unit" | "reading" | "variance" | "where">;

function signalAtRest(at: KeyOnReading, { prepared, bank }: MeterSlot, a: Assumptions): AtRest | null {
  if (prepared === null || (prepared.signalUnit !== "V" && prepared.signalUnit !== "ratio")) return null;
  const quantity = RAW_SIGNAL[prepared.signalUnit];
  const raw = (bank === null ? undefined : at.readings.get(`${quantity}:${bank}`)) ?? at.readings.get(quantity);
  const { x, y } = prepared.curve;
  const zero = prepared.falling ? x.length - 1 : 0;
  const next = prepared.falling ? zero - 1 : 1;
  const largest = Math.max(...y);
  if (raw === undefined || Math.abs(y[zero]!) > NO_FLOW * largest) return null;
  const share = Math.min(1, a.draught / Math.max(y[next]! - y[zero]!, 1e-9));
  const draught = (x[next]! - x[zero]!) * share;
  const tolerance = prepared.signalUnit === "V" ? a.meterRestVoltage : a.meterRestRatio;
  return {
    unit: prepared.signalUnit === "V" ? "V" : "1",
    reading: raw.mean - x[zero]!,
    variance: raw.variance + tolerance ** 2 + draught ** 2,
    where: placeOf([at]),
  };
}

function flowAtRest(at: KeyOnReading, { prepared, bank }: MeterSlot, a: Assumptions): AtRest | null {
  const flow = (bank === null ? undefined : at.readings.get(`meterFlow:${bank}`)) ?? at.readings.get("meterFlow");
  const clipped = Math.max(ZERO, 1.05 * Math.min(...(prepared?.curve.y ?? [0])));
  if (flow === undefined || flow.mean <= clipped) return null;
  return {
    unit: "g/s",
    reading: flow.mean * 1e3,
    variance: (flow.variance + a.meterRestFlow ** 2) * 1e6,
    where: placeOf([at]),
  };
}
