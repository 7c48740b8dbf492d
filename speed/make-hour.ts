/**
 * The recording that speed is measured on: one hour at 10 Hz, time and 20 channels, every cell filled (36,000 rows), from the
 * model engine with a leak. Seeded: the same bytes every time.
 */
import { writeFileSync } from "node:fs";
import {
  ambientAt,
  type EngineFileObject,
  PLAIN_STYLE,
  type Protocol,
  petrolWithMeter,
  type Recorder,
  roadDriving,
  simulateRecording,
  standardRecording,
} from "../src/model-engine/index.ts";
import { seededRandom } from "../src/numerics/index.ts";

const SEED = 20;

export const HOUR_LOGGER: Recorder = {
  kind: "logger",
  rate: 10,
  style: PLAIN_STYLE,
  channels: [
    "speed",
    "roadSpeed",
    "manifoldPressure",
    "meterFlow",
    "meterVoltage",
    "intakeTemperature",
    "ambientTemperature",
    "coolant",
    "throttle",
    "pedal",
    "shortTrim",
    "longTrim",
    "lambda",
    "lambdaCommanded",
    "loopState",
    "calculatedLoad",
    "absoluteLoad",
    "pulseWidth",
    "barometer",
    "battery",
  ],
};

export function hourRecording(): { readonly text: string; readonly engine: EngineFileObject } {
  const standard = standardRecording();
  const restOfHour = 3600 - standard.reduce((sum, segment) => sum + segment.seconds, 0);
  const protocol: Protocol = [...standard, ...roadDriving(seededRandom(SEED).fork("road"), restOfHour)];
  const { recording, engine, truth } = simulateRecording({
    engine: petrolWithMeter(SEED),
    protocol,
    faults: [{ cause: "manifold-leak", size: 3 }],
    ambient: ambientAt({ altitude: 120, temperature: 288, relativeHumidity: 0.6 }),
    recorder: HOUR_LOGGER,
    seed: SEED,
  });
  const rows = recording.text.split("\n").length - 2;
  if (rows < 36_000 || truth.rows < 180_000) throw new Error(`Assertion failed: an hour has 36,000 rows, got ${rows}`);
  return { text: recording.text, engine };
}

/** Writes the recording to `path` and its engine file beside it; returns the path of the engine file. */
export function writeHour(path: string): string {
  const { text, engine } = hourRecording();
  const enginePath = `${path}.engine.json`;
  writeFileSync(path, text);
  writeFileSync(enginePath, `${JSON.stringify(engine, null, 2)}\n`);
  return enginePath;
}
