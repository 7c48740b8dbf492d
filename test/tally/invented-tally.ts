/** A tally of an invented 2 L petrol engine whose witnesses agree, with faults planted by their own laws: for tests of the algebra. */
import type { OperatingPoint, Reading } from "../../src/channels/index.ts";
import { CATALOGUE } from "../../src/findings/catalogue.ts";
import { parseEngineFile } from "../../src/job/engine-file/parse-engine-file.ts";
import { seededRandom } from "../../src/numerics/index.ts";
import { buildTallyModel, defaultAssumptions, type TallyModel } from "../../src/tally/index.ts";

export type Planted = { readonly cause: string; readonly size: number };

type Options = {
  readonly faults?: readonly Planted[];
  readonly engine?: { readonly [key: string]: unknown };
  readonly seed?: number;
  /** sd of the noise of every witness, ln units */
  readonly noise?: number;
};

const SPEEDS = [800, 800, 1500, 2000, 2500, 2500, 3000, 3500, 4500, 5500];
const PRESSURES = [33, 38, 40, 55, 45, 70, 90, 97, 97, 96];

export function inventedTally({ faults = [], engine = {}, seed = 1, noise = 0.004 }: Options = {}): TallyModel {
  const parsed = parseEngineFile(
    JSON.stringify({
      format: "airtally-engine/1",
      displacement: "2 L",
      cylinders: 4,
      strokes: 4,
      fuel: "petrol",
      metering: "meter",
      egr: "none",
      lambdaProbe: "wide",
      ...engine,
    }),
  );
  if (!parsed.ok) throw new Error(parsed.message);
  const points = SPEEDS.map((speed, i) => pointOf(i, speed, PRESSURES[i]!));
  const model = buildTallyModel({ points, keyOn: [] }, parsed.value, defaultAssumptions());
  const random = seededRandom(seed);
  const pressure = model.witnesses.indexOf("pressure");
  const w = model.witnesses.length;
  // All witnesses say what the pressure says, so that a healthy engine is exactly healthy but for the noise.
  const y = model.y.map((value, row) =>
    model.present[row] === 1 ? model.y[row - (row % w) + pressure]! + noise * random.normal() : value,
  );
  for (const { cause, size } of faults) {
    const { law } = CATALOGUE.find((c) => c.id === cause)!;
    const { effect } = law.predict(model, size, law.shapes(model)[0]!.value);
    for (let row = 0; row < y.length; row++) y[row] = y[row]! + effect[row]!;
  }
  return { ...model, y };
}

function pointOf(i: number, speed: number, pressure: number): OperatingPoint {
  const flow = (0.85 * 0.002 * (speed / 120) * pressure * 1000) / (287 * 310);
  const state = speed < 1000 ? "idle" : pressure > 95 ? "full-load" : "warm";
  return {
    id: i,
    recording: 0,
    start: 10 * i,
    end: 10 * i + 8,
    region: String(i),
    states: ["warm", "closed-loop", state],
    readings: new Map([
      ["engineSpeed", reading(speed / 60)],
      ["manifoldPressure", reading(pressure * 1000)],
      ["meterFlow", reading(flow)],
      ["intakeTemperature", reading(298)],
      ["barometer", reading(99_000)],
      ["shortTrim", { ...reading(0.01), variance: 1e-5 }],
      ["lambda", reading(1)],
    ] as const),
  };
}

function reading(mean: number): Reading {
  return { mean, variance: (0.002 * mean) ** 2, slope: 0, scatter: 0, low: mean, high: mean, samples: 10 };
}
