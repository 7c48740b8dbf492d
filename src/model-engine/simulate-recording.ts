/** One recording of one model engine: engine, protocol, planted faults, ambient, recorder and seed in; text and truth out. */

import { seededRandom } from "../numerics/index.ts";
import { drawnByCrank } from "./crank-air.ts";
import { type EngineFileObject, engineFileOf } from "./engine-file.ts";
import type { Fault } from "./fault.ts";
import type { Ambient, ModelEngine } from "./model-engine.ts";
import { prepareEngine } from "./prepared-engine.ts";
import type { Protocol } from "./protocol.ts";
import { type Recorder, recordText } from "./recorder.ts";
import { runEngine } from "./run-engine.ts";
import type { Trace } from "./trace.ts";

export type Simulation = {
  readonly engine: ModelEngine;
  readonly protocol: Protocol;
  readonly faults: readonly Fault[];
  readonly ambient: Ambient;
  readonly recorder: Recorder;
  readonly seed: number;
  /** cylinders by crank angle: some ten times slower, and the meter hears the pulsation; cycle-averaged where not given */
  readonly byCrank?: boolean;
  readonly name?: string;
};

export type SimulatedRecording = {
  readonly recording: { readonly name: string; readonly text: string };
  /** the engine file its owner would write, in the words and units of "airtally-engine/1" */
  readonly engine: EngineFileObject;
  readonly truth: Trace;
};

export function simulateRecording(simulation: Simulation): SimulatedRecording {
  const { protocol, faults, ambient, recorder, seed, byCrank = false } = simulation;
  const { design } = simulation.engine;
  const engine = byCrank ? { ...simulation.engine, design: drawnByCrank(design) } : simulation.engine;
  const random = seededRandom(seed);
  const truth = runEngine(prepareEngine(engine, ambient, faults), protocol, { random: random.fork("run"), byCrank });
  return {
    recording: {
      name: simulation.name ?? `model-engine-${seed}.csv`,
      text: recordText(truth, recorder, random.fork("recorder")),
    },
    engine: engineFileOf(engine.design, recorder.channels.includes("lambdaIndependent")),
    truth,
  };
}
