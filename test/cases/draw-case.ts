/**
 * Invented cases, each with its truth: engine, weather, driver, recorder and faults drawn by case-parameters.json.
 *
 * Two sets. "tuning" never sees the withheld variant, geometry or driver; every case of "final" has at least one of the three, so
 * that figures reported from it are on engines and driving the inference was not tuned on. The case of a number is the same for ever.
 */
import {
  type Ambient,
  ambientAt,
  buildEngine,
  FAMILY_DESIGNS,
  type Family,
  type Fault,
  type ModelEngine,
  type Protocol,
  prepareEngine,
  RECORDER_CHANNELS,
  type Recorder,
  type RecorderChannelId,
  simulateRecording,
  type Trace,
  trueBreathing,
  trueMeterCurve,
} from "../../src/model-engine/index.ts";
import { type SeededRandom, seededRandom } from "../../src/numerics/index.ts";
import { CASE_PARAMETERS } from "./case-parameters.ts";
import { drawFaults } from "./draw-faults.ts";
import { drawRecorder } from "./draw-recorder.ts";
import { DRIVERS } from "./drivers.ts";
import { ofGeometry, VARIANTS } from "./engine-variants.ts";
import { pick } from "./pick.ts";

export type CaseSet = "tuning" | "final";

export type InventedCase = {
  readonly set: CaseSet;
  readonly number: number;
  readonly family: Family;
  readonly variant: string;
  readonly geometry: string;
  readonly driver: string;
  readonly recorderName: string;
  readonly style: string;
  /** the truth: none, one or two */
  readonly faults: readonly Fault[];
  readonly engine: ModelEngine;
  readonly ambient: Ambient;
  readonly protocol: Protocol;
  readonly recorder: Recorder;
  readonly seed: number;
};

/** `wanted`: of this family alone, instead of one drawn by its weight. */
export function drawCase(set: CaseSet, number: number, wanted: Family | null = null): InventedCase {
  const random = seededRandom(CASE_PARAMETERS.version).fork(`${set} ${number}`);
  const families = CASE_PARAMETERS.families.filter((row) => wanted === null || row.family === wanted);
  const { family, altitude_m } = pick(families, random.fork("family"));
  const { variant, geometry, driver } = drawSetting(set, random.fork("setting"));
  const base = FAMILY_DESIGNS[family as Family];
  const design = ofGeometry(VARIANTS[variant.variant]!(base), geometry);
  const seed = random.fork("seed").integer(1, 2 ** 31 - 1);
  const { name: recorderName, style, recorder } = drawRecorder(family as Family, design, random.fork("recorder"));
  return {
    set,
    number,
    family: family as Family,
    variant: variant.variant,
    geometry: geometry.geometry,
    driver: driver.driver,
    recorderName,
    faults: drawFaults(family as Family, design, random.fork("faults")),
    engine: buildEngine(design, seed),
    ambient: drawAmbient(altitude_m, random.fork("ambient")),
    protocol: DRIVERS[driver.driver]!(random.fork("road"), design.largestSpeed),
    style,
    recorder,
    seed,
  };
}

export type RecordedCase = {
  readonly name: string;
  /** the recording's file, and the engine file its owner would write */
  readonly bytes: Uint8Array;
  readonly engineFile: string;
  /** the truth: faults with their sizes are in the case; every flow, pressure and mixture step by step here */
  readonly truth: Trace;
  /** signal and kg/s as the meter really was; speed, Pa and efficiency as the cylinders really were */
  readonly meterCurve: ReturnType<typeof trueMeterCurve>;
  readonly breathing: ReturnType<typeof trueBreathing>;
  /** what the recorder added to each reading, in the unit of its channel table: standard deviations and the step */
  readonly noise: readonly ReadingNoise[];
};

export type ReadingNoise = {
  readonly channel: RecorderChannelId;
  readonly unit: string;
  readonly absolute: number;
  readonly relative: number;
  readonly step: number;
};

/** The recording, the engine file and the truth of a case: takes a part of a second. */
export function recordCase(one: InventedCase): RecordedCase {
  const { recording, engine, truth } = simulateRecording({ ...one, name: `case-${one.set}-${one.number}.csv` });
  const bytes = new TextEncoder().encode(recording.text);
  const prepared = prepareEngine(one.engine, one.ambient, one.faults);
  return {
    name: recording.name,
    bytes,
    engineFile: JSON.stringify(engine),
    truth,
    meterCurve: trueMeterCurve(prepared),
    breathing: trueBreathing(prepared),
    noise: one.recorder.channels.map((channel) => noiseOf(channel, one.recorder.kind)),
  };
}

function noiseOf(channel: RecorderChannelId, kind: Recorder["kind"]): ReadingNoise {
  const { unit, noise, relativeNoise, step, loggerStep } = RECORDER_CHANNELS[channel];
  return { channel, unit, absolute: noise, relative: relativeNoise, step: kind === "logger" ? loggerStep : step };
}

function drawSetting(set: CaseSet, random: SeededRandom) {
  for (;;) {
    const variant = pick(CASE_PARAMETERS.variants, random);
    const geometry = pick(CASE_PARAMETERS.geometries, random);
    const driver = pick(CASE_PARAMETERS.drivers, random);
    const withheld = variant.withheld || geometry.withheld || driver.withheld;
    if (withheld === (set === "final")) return { variant, geometry, driver };
  }
}

function drawAmbient(altitude_m: readonly [number, number], random: SeededRandom): Ambient {
  const between = ([low, high]: readonly [number, number]) => low + (high - low) * random.uniform();
  const { temperature_degC, relativeHumidity, largestHumidityRatio } = CASE_PARAMETERS.ambient;
  const ambient = ambientAt({
    altitude: between(altitude_m),
    temperature: 273.15 + between(temperature_degC),
    relativeHumidity: between(relativeHumidity),
  });
  return { ...ambient, humidityRatio: Math.min(ambient.humidityRatio, largestHumidityRatio) };
}
