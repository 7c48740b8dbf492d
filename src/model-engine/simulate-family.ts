/** A whole case in one call: an engine of a family, a seeded ambient, the standard recording and a drive, a common tester. */

import { type SeededRandom, seededRandom } from "../numerics/index.ts";
import type { EngineDesign } from "./engine-design.ts";
import { BOOSTED_BOTH, buildEngine, DIESEL_WITH_EGR, PETROL_WITH_METER, PETROL_WITH_PRESSURE } from "./families.ts";
import type { Fault } from "./fault.ts";
import { type Ambient, ambientAt } from "./model-engine.ts";
import { PETROL_WITH_VANE, PETROL_WITH_VORTEX } from "./older-families.ts";
import { type Protocol, roadDriving, standardRecording } from "./protocol.ts";
import type { Recorder } from "./recorder.ts";
import { type SimulatedRecording, simulateRecording } from "./simulate-recording.ts";
import { type Family, standardTester } from "./standard-recorders.ts";

export const FAMILY_DESIGNS: { readonly [family in Family]: EngineDesign } = {
  "petrol-with-meter": PETROL_WITH_METER,
  "petrol-with-pressure": PETROL_WITH_PRESSURE,
  "boosted-both": BOOSTED_BOTH,
  "petrol-with-vane": PETROL_WITH_VANE,
  "petrol-with-vortex": PETROL_WITH_VORTEX,
  "diesel-with-egr": DIESEL_WITH_EGR,
};

export function simulateFamily(wanted: {
  readonly family: Family;
  readonly seed: number;
  readonly faults?: readonly Fault[];
  /** scale of the healthy tolerances, 1 as published */
  readonly spread?: number;
  /** s of road driving after the standard recording */
  readonly driving?: number;
  readonly protocol?: Protocol;
  readonly ambient?: Ambient;
  readonly recorder?: Recorder;
}): SimulatedRecording {
  const { family, seed } = wanted;
  const random = seededRandom(seed);
  const design = FAMILY_DESIGNS[family];
  return simulateRecording({
    engine: buildEngine(design, seed, wanted.spread ?? 1),
    protocol: wanted.protocol ?? [
      ...standardRecording(design.largestSpeed),
      ...roadDriving(random.fork("road"), wanted.driving ?? 240, 0.6 * design.largestSpeed),
    ],
    faults: wanted.faults ?? [],
    ambient: wanted.ambient ?? drawAmbient(random.fork("ambient")),
    recorder: wanted.recorder ?? standardTester(family),
    seed,
    name: `${family}-${seed}.csv`,
  });
}

/** Temperate weather: dew points stay below 18 degC. */
function drawAmbient(random: SeededRandom): Ambient {
  const altitude = 600 * random.uniform();
  const temperature = 278 + 25 * random.uniform();
  const relativeHumidity = 0.3 + 0.6 * random.uniform();
  const moist = ambientAt({ altitude, temperature, relativeHumidity });
  return { ...moist, humidityRatio: Math.min(moist.humidityRatio, 0.013) };
}
