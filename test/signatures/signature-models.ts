/**
 * For tests of laws: an invented 2 L engine at idle, cruise, wide open at low speed and full load, seen by every witness there
 * is, and the shift that a cause makes of each.
 */
import type { OperatingPoint, Reading, ReadingKey } from "../../src/channels/index.ts";
import type { EngineDescription } from "../../src/engine/index.ts";
import type { Prediction } from "../../src/findings/index.ts";
import { CATALOGUE } from "../../src/findings/index.ts";
import { parseEngineFile } from "../../src/job/engine-file/parse-engine-file.ts";
import {
  buildTallyModel,
  defaultAssumptions,
  type StandingKind,
  type StandingObservation,
  type TallyModel,
  type TallyWitness,
} from "../../src/tally/index.ts";

export const [IDLE, CRUISE, LOW, FULL] = [0, 1, 2, 3] as const;

/** rev/min, kPa, g/s */
export const STATES = [
  { speed: 800, pressure: 35, flow: 2.7, states: ["idle", "closed-loop"] },
  { speed: 2500, pressure: 60, flow: 17, states: ["closed-loop"] },
  { speed: 1500, pressure: 96, flow: 22, states: ["full-load"] },
  { speed: 5000, pressure: 97, flow: 70, states: ["full-load"] },
] as const;
export const AMBIENT = 99;

export function reading(mean: number): Reading {
  return { mean, variance: (0.002 * mean) ** 2, slope: 0, scatter: 0, low: mean, high: mean, samples: 10 };
}

export type Change = {
  /** keys of the engine file */
  readonly engine?: { readonly [key: string]: unknown };
  /** kPa, point by point */
  readonly pressures?: readonly number[];
  /** more readings (SI), point by point; none where null */
  readonly readings?: { readonly [key in ReadingKey]?: readonly (number | null)[] };
};

export const METER_STRATEGY: { readonly [key: string]: unknown } = {
  format: "airtally-engine/1",
  displacement: "2 L",
  cylinders: 4,
  strokes: 4,
  fuel: "petrol",
  metering: "meter",
  egr: "fitted",
  lambdaProbe: "wide",
};

/** As the tally lays it out. */
export function modelOf(change: Change = {}): TallyModel {
  const engine = parseEngineFile(JSON.stringify({ ...METER_STRATEGY, ...change.engine }));
  if (!engine.ok) throw new Error(engine.message);
  const points = STATES.map((s, i): OperatingPoint => {
    const readings = new Map<ReadingKey, Reading>([
      ["engineSpeed", reading(s.speed / 60)],
      ["manifoldPressure", reading(1000 * (change.pressures?.[i] ?? s.pressure))],
      ["meterFlow", reading(s.flow / 1000)],
      ["intakeTemperature", reading(298)],
      ["barometer", reading(1000 * AMBIENT)],
      ["shortTrim", { ...reading(0.01), variance: 1e-5 }],
      ["lambda", reading(1)],
    ]);
    for (const [key, values] of Object.entries(change.readings ?? {})) {
      const value = values?.[i];
      if (value === undefined || value === null) readings.delete(key as ReadingKey);
      else readings.set(key as ReadingKey, reading(value));
    }
    return {
      id: i,
      recording: 0,
      start: 10 * i,
      end: 10 * i + 8,
      region: String(i),
      states: ["warm", ...s.states],
      readings,
    };
  });
  return buildTallyModel({ points, keyOn: [] }, engine.value as EngineDescription, defaultAssumptions());
}

export const WITNESSES: readonly TallyWitness[] = ["meter", "pressure", "throttle", "fuel", "exhaust"];
const STANDING: readonly (readonly [StandingKind, StandingObservation["unit"]])[] = [
  ["pressure-against-barometer", "kPa"],
  ["meter-at-zero-flow", "g/s"],
  ["intake-temperature-at-cold-soak", "K"],
  ["full-load-pressure-drop", "kPa"],
];

/** The same, with every witness and every standing observation present: what a law would do to each, recorded or not. */
export function seenByAll(model: TallyModel): TallyModel {
  const rows = model.points.length * WITNESSES.length;
  const meter = model.physics.meter.meter ?? Float64Array.from(STATES, (s) => s.flow / 1000);
  return {
    ...model,
    witnesses: WITNESSES,
    present: new Uint8Array(rows).fill(1),
    bounds: [],
    physics: { ...model.physics, meter: { meter }, throttle: model.physics.throttle ?? throttleOf(model) },
    standing: STANDING.map(([kind, unit]) => ({
      kind,
      unit,
      meter: kind === "meter-at-zero-flow" ? "meter" : null,
      reading: 0,
      variance: 1,
      basis: new Float64Array(model.columns),
      where: "",
    })),
  };
}

/** One area throughout, and before it the ambient pressure or, under boost, a little more than behind it. */
function throttleOf({ physics }: TallyModel): TallyModel["physics"]["throttle"] {
  const upstream = physics.pressure.map((p, i) => (p < physics.barometer[i]! ? physics.barometer[i]! : 1.1 * p));
  const none = new Float64Array(upstream.length);
  const area = none.map(() => 1e-4);
  return { upstream, area, openingEffect: none, bypass: none, pressureEffect: none, bypassVaries: false };
}

export function predictionOf(model: TallyModel, cause: string, size: number, shape?: number): Prediction {
  const { law } = CATALOGUE.find((c) => c.id === cause)!;
  return law.predict(model, size, shape ?? law.shapes(model)[0]!.value);
}

/** Shift of one witness at each point, size in SI. */
export function shifts(
  model: TallyModel,
  witness: TallyWitness,
  cause: string,
  size: number,
  shape?: number,
): number[] {
  const { effect } = predictionOf(model, cause, size, shape);
  const j = model.witnesses.indexOf(witness);
  return model.points.map((_, i) => effect[i * model.witnesses.length + j]!);
}
