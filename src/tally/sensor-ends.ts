/**
 * Where a sensor or its channel can go no further: a reading there is a bound, not a value.
 *
 * Rule    pressure: 255 kPa, where the parameter of SAE J1979 ends, or the last point of the sensor's own line; meter: the last
 *         point of its curve. An end counts only where the job's highest reading stops at it: one that goes beyond shows that
 *         it is none
 * Source  [j1979] for 255 kPa
 */
import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import { stopsAtEnd } from "./meter-end.ts";
import type { MeterSlot } from "./meter-slots.ts";
import { find } from "./readings.ts";

export type SensorEnds = {
  /** Pa; readings from here on are bounds; null where the sensor never stopped */
  readonly pressure: number | null;
  /** one a slot */
  readonly meterStopped: readonly ((point: OperatingPoint) => boolean)[];
};

const J1979_END = 255e3;
/** relative: a reading this close to an end is at it. Resolution of the parameter is 1 kPa. */
const AT_END = 0.004;

export function sensorEnds(
  engine: EngineDescription,
  slots: readonly MeterSlot[],
  points: readonly OperatingPoint[],
): SensorEnds {
  const highest = Math.max(0, ...points.map((point) => find(point, "manifoldPressure", null)?.high ?? 0));
  const line = engine.manifoldSensor?.points?.map(([, pressure]) => pressure) ?? [];
  const end = [J1979_END, Math.max(0, ...line)].find((p) => p > 0 && Math.abs(highest / p - 1) <= AT_END);
  return {
    pressure: end === undefined ? null : (1 - AT_END) * end,
    meterStopped: slots.map((slot) => stopsAtEnd(slot, points)),
  };
}
