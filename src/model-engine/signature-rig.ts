/**
 * Shared by the tests of signatures: an engine as drawn, run through idle, cruise and full load, and the shift of every log witness
 * against the healthy engine. Witnesses by the definitions of the tally, with the truth known.
 */
import { speedDensityFlow } from "../engine/index.ts";
import { seededRandom } from "../numerics/index.ts";
import type { EngineDesign } from "./engine-design.ts";
import { buildEngine, PETROL_WITH_METER } from "./families.ts";
import type { Fault } from "./fault.ts";
import { ambientAt } from "./model-engine.ts";
import { prepareEngine } from "./prepared-engine.ts";
import { type Protocol, rpm } from "./protocol.ts";
import { runEngine } from "./run-engine.ts";
import type { Trace } from "./trace.ts";

const ambient = ambientAt({ altitude: 0, temperature: 293, relativeHumidity: 0.4 });
const protocol: Protocol = [
  { do: "idle", seconds: 40 },
  { do: "drive", seconds: 30, speed: rpm(2500), load: 0.7 },
  { do: "drive", seconds: 10, speed: rpm(1500), load: 1, ramp: 1 },
  { do: "drive", seconds: 12, speed: rpm(4500), load: 1 },
];
/** s: mean over the last seconds of each part, where it runs steadily. */
const PARTS = { idle: [28, 40], cruise: [62, 70], low: [75, 80], full: [88, 92] } as const;
export type Part = keyof typeof PARTS;

/** ln(witness / true air); trims, throttle reading, lambda and pressure before the throttle as logarithms */
const KINDS = ["meter", "pressure", "fuel", "trim", "throttle", "lambda", "duct"] as const;
export type Witnesses = { [kind in (typeof KINDS)[number]]: number };

export const AS_METER: EngineDesign = PETROL_WITH_METER;
export const AS_PRESSURE: EngineDesign = {
  ...PETROL_WITH_METER,
  computer: { ...PETROL_WITH_METER.computer, dosedBy: "pressure" },
};

export type Shifts = { readonly [part in Part]: Witnesses };

/** Shift of each witness against the same engine without the fault. */
export function shiftOf(fault: Fault | readonly Fault[], design: EngineDesign = AS_METER): Shifts {
  const faults = "cause" in fault ? [fault] : fault;
  const faulty = runOnce(design, faults);
  const healthy = runOnce(design, []);
  const against = (part: Part) =>
    Object.fromEntries(KINDS.map((kind) => [kind, faulty[part][kind] - healthy[part][kind]])) as Witnesses;
  return { idle: against("idle"), cruise: against("cruise"), low: against("low"), full: against("full") };
}

/** Runs of this test file, so that a fault asked for twice is run once. */
const kept = new Map<EngineDesign, Map<string, Shifts>>();
function runOnce(design: EngineDesign, faults: readonly Fault[]): Shifts {
  const ofDesign = kept.get(design) ?? new Map<string, Shifts>();
  kept.set(design, ofDesign);
  const key = JSON.stringify(faults);
  const known = ofDesign.get(key) ?? run(design, faults);
  ofDesign.set(key, known);
  return known;
}

function run(design: EngineDesign, faults: readonly Fault[]): Shifts {
  const prepared = prepareEngine(buildEngine(design, 1, 0), ambient, faults);
  const trace = runEngine(prepared, protocol, { random: seededRandom(5) });
  const of = (part: Part) => witnesses(design, trace, part);
  return { idle: of("idle"), cruise: of("cruise"), low: of("low"), full: of("full") };
}

function witnesses(design: EngineDesign, trace: Trace, part: Part): Witnesses {
  const [from, to] = PARTS[part];
  const mean: Witnesses = { meter: 0, pressure: 0, fuel: 0, trim: 0, throttle: 0, lambda: 0, duct: 0 };
  const first = Math.round(from / trace.step);
  const last = Math.round(to / trace.step);
  for (let i = first; i < last; i++) {
    const air = trace.airIntoCylinders[i]!;
    const trim = (1 + trace.shortTrim[i]!) * (1 + trace.longTrim[i]!);
    const byDensity = speedDensityFlow({
      volumetricEfficiency: 1,
      manifoldPressure: trace.pressureReading[i]!,
      displacement: design.displacement,
      engineSpeed: trace.speed[i]!,
      chargeTemperature: trace.intakeTemperatureReading[i]!,
    });
    const n = last - first;
    mean.meter += Math.log(trace.meterReading[i]! / air) / n;
    mean.pressure += Math.log(byDensity / air) / n;
    mean.fuel +=
      Math.log((trace.airReported[i]! * trim * trace.lambdaReading[i]!) / trace.lambdaCommanded[i]! / air) / n;
    mean.trim += Math.log(trim) / n;
    mean.throttle += Math.log(trace.throttleReading[i]!) / n;
    mean.duct += Math.log(trace.pressureBeforeThrottle[i]!) / n;
    mean.lambda += Math.log(trace.lambda[i]!) / n;
  }
  return mean;
}
