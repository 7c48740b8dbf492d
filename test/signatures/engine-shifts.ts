/**
 * What a planted fault does to every witness as the tally makes them of the model engine's readings: the engine as drawn is run with
 * and without it through idle, cruise, half open, wide open at low speed and full load; the shift is that of y less that of the true air.
 */
import type { OperatingPoint, ReadingKey } from "../../src/channels/index.ts";
import type { EngineDescription } from "../../src/engine/index.ts";
import { parseEngineFile } from "../../src/job/engine-file/parse-engine-file.ts";
import {
  ambientAt,
  buildEngine,
  type EngineDesign,
  engineFileOf,
  type Fault,
  type Protocol,
  prepareEngine,
  rpm,
  runEngine,
  type Trace,
  type TraceColumn,
} from "../../src/model-engine/index.ts";
import { seededRandom } from "../../src/numerics/index.ts";
import { buildTallyModel, defaultAssumptions, type TallyModel, type TallyWitness } from "../../src/tally/index.ts";
import { reading } from "./signature-models.ts";

const AMBIENT = ambientAt({ altitude: 0, temperature: 293, relativeHumidity: 0.4 });
const PROTOCOL: Protocol = [
  { do: "idle", seconds: 40 },
  { do: "drive", seconds: 30, speed: rpm(2500), load: 0.7 },
  { do: "drive", seconds: 12, speed: rpm(2500), load: 0.85 },
  { do: "drive", seconds: 10, speed: rpm(1500), load: 1, ramp: 1 },
  { do: "drive", seconds: 12, speed: rpm(6000), load: 1 },
];
/** s, steady; and the states a recording would tell */
const PARTS = [
  { from: 28, to: 40, states: ["warm", "idle", "closed-loop"] },
  { from: 62, to: 70, states: ["warm", "closed-loop"] },
  { from: 76, to: 82, states: ["warm", "closed-loop"] },
  { from: 87, to: 92, states: ["warm", "full-load"] },
  { from: 100, to: 104, states: ["warm", "full-load"] },
] as const;

const READ: readonly (readonly [ReadingKey, TraceColumn])[] = [
  ["engineSpeed", "speed"],
  ["manifoldPressure", "pressureReading"],
  ["meterFlow", "meterReading"],
  ["intakeTemperature", "intakeTemperatureReading"],
  ["barometer", "barometerReading"],
  ["coolantTemperature", "coolantReading"],
  ["shortTrim", "shortTrim"],
  ["longTrim", "longTrim"],
  ["lambda", "lambdaReading"],
  ["lambdaCommanded", "lambdaCommanded"],
  ["throttlePosition", "throttleReading"],
];

export type EngineRun = { readonly model: TallyModel; readonly logAir: readonly number[] };

/** `design` doses as it says; the probe is made wide, so that full load has a fuel witness. */
export function runOf(design: EngineDesign, faults: readonly Fault[]): EngineRun {
  const engine = buildEngine({ ...design, lambdaProbe: "wide" }, 1, 0);
  const trace = runEngine(prepareEngine(engine, AMBIENT, faults), PROTOCOL, { random: seededRandom(5) });
  const points = PARTS.map((part, id): OperatingPoint => {
    const mean = (column: TraceColumn) => meanOf(trace, column, part.from, part.to);
    const readings = new Map(
      READ.filter(([key]) => key !== "meterFlow" || design.meter !== null).map(([key, column]) => [
        key,
        { ...reading(mean(column)), variance: 1e-8 },
      ]),
    );
    return { id, recording: 0, start: part.from, end: part.to, region: String(id), states: part.states, readings };
  });
  const file = parseEngineFile(JSON.stringify(engineFileOf(engine.design)));
  if (!file.ok) throw new Error(file.message);
  const model = buildTallyModel({ points, keyOn: [] }, file.value as EngineDescription, defaultAssumptions());
  return { model, logAir: PARTS.map(({ from, to }) => Math.log(meanOf(trace, "airIntoCylinders", from, to))) };
}

/**
 * Shift of a witness at each part, faulty against healthy; null where either does not hear it. The tally reads the
 * throttle's stop off the lowest opening of each job: what the idle governor does against a fault is taken for the stop, and idle
 * compares nothing.
 */
export function shiftBetween(faulty: EngineRun, healthy: EngineRun, witness: TallyWitness): (number | null)[] {
  const y = ({ model, logAir }: EngineRun, i: number) => {
    const j = model.witnesses.indexOf(witness);
    const at = i * model.witnesses.length + j;
    return j < 0 || model.present[at] !== 1 ? null : model.y[at]! - logAir[i]!;
  };
  return PARTS.map((_, i) => {
    if (witness === "throttle" && i === 0) return null;
    const [with_, without] = [y(faulty, i), y(healthy, i)];
    return with_ === null || without === null ? null : with_ - without;
  });
}

function meanOf(trace: Trace, column: TraceColumn, from: number, to: number): number {
  const first = Math.round(from / trace.step);
  const last = Math.round(to / trace.step);
  let sum = 0;
  for (let i = first; i < last; i++) sum += trace[column][i]!;
  return sum / (last - first);
}
