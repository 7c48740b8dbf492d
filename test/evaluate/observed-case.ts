/**
 * An invented case as operating points with its truth: what is kept of it, so that the inference can be judged again and again
 * without simulating again.
 */
import {
  findOperatingPoints,
  type KeyOnReading,
  type OperatingPoint,
  type ReadingKey,
} from "../../src/channels/index.ts";
import { parseEngineFile } from "../../src/job/engine-file/parse-engine-file.ts";
import { understand } from "../../src/job/understand.ts";
import type { Trace } from "../../src/model-engine/index.ts";
import { type CaseSet, drawCase, type InventedCase, recordCase } from "../cases/draw-case.ts";
import { type TrueFault, trueFaults } from "./true-faults.ts";

export type ObservedCase = {
  readonly set: CaseSet;
  readonly number: number;
  readonly family: string;
  readonly variant: string;
  readonly geometry: string;
  readonly driver: string;
  readonly recorder: string;
  readonly engineFile: string;
  readonly points: readonly OperatingPoint[];
  readonly keyOn: readonly KeyOnReading[];
  /** another run of the same engine without the faults: what the oracle knows; for one case in ORACLE_EVERY, else null */
  readonly twin: { readonly points: readonly OperatingPoint[]; readonly keyOn: readonly KeyOnReading[] } | null;
  readonly faults: readonly TrueFault[];
  /** per point: ln of the dry fresh air into the cylinders, kg/s */
  readonly logAir: readonly number[];
};

export const ORACLE_EVERY = 4;

/** A reason where the recording can't be read: that is a result too. */
export type Observation =
  | { readonly ok: true; readonly value: ObservedCase }
  | { readonly ok: false; readonly set: CaseSet; readonly number: number; readonly reason: string };

export function observe(set: CaseSet, number: number): Observation {
  const one = drawCase(set, number);
  const seen = look(one);
  if (typeof seen === "string") return { ok: false, set, number, reason: seen };
  const healthy = number % ORACLE_EVERY === 0 ? look({ ...one, faults: [], seed: one.seed + 1 }) : null;
  if (typeof healthy === "string") return { ok: false, set, number, reason: `healthy twin: ${healthy}` };
  return {
    ok: true,
    value: {
      set,
      number,
      family: one.family,
      variant: one.variant,
      geometry: one.geometry,
      driver: one.driver,
      recorder: one.recorderName,
      engineFile: seen.engineFile,
      points: seen.points,
      keyOn: seen.keyOn,
      twin: healthy === null ? null : { points: healthy.points, keyOn: healthy.keyOn },
      faults: trueFaults(one, seen.points, seen.truth),
      logAir: seen.points.map((point) => meanLogAir(seen.truth, point)),
    },
  };
}

function look(one: InventedCase) {
  const { name, bytes, engineFile, truth } = recordCase(one);
  const engine = parseEngineFile(engineFile);
  if (!engine.ok) return engine.message;
  const understood = understand({ name, chunks: [bytes], sha256: () => "" }, engine.value, null);
  if (!understood.ok) return understood.message;
  const { points, keyOn } = findOperatingPoints(understood.value.set, understood.value.states, 0, 1);
  return { engineFile, points, keyOn, truth };
}

function meanLogAir({ time, airIntoCylinders, step }: Trace, { start, end }: OperatingPoint): number {
  const from = Math.max(0, Math.round((start - time[0]!) / step));
  const to = Math.min(airIntoCylinders.length, Math.max(from + 1, Math.round((end - time[0]!) / step)));
  let sum = 0;
  for (let i = from; i < to; i++) sum += airIntoCylinders[i]!;
  return Math.log(sum / (to - from));
}

/** Readings as pairs, for JSON. */
export function toText(observation: Observation): string {
  return JSON.stringify(observation, (_, value) => (value instanceof Map ? { pairs: [...value] } : value));
}

export function fromText(text: string): Observation {
  return JSON.parse(text, (_, value) =>
    value !== null && typeof value === "object" && Array.isArray(value.pairs)
      ? new Map(value.pairs as [ReadingKey, unknown][])
      : value,
  ) as Observation;
}
