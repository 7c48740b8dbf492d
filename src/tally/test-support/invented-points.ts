/** For tests only: operating points and an engine of an invented kind, by hand. */
import type { OperatingPoint, Reading, ReadingKey } from "../../channels/index.ts";
import type { EngineDescription } from "../../engine/index.ts";

export function reading(mean: number, relativeSd = 0.002): Reading {
  return { mean, variance: (relativeSd * mean) ** 2, slope: 0, scatter: 0, low: mean, high: mean, samples: 10 };
}

export type Readings = { readonly [key in ReadingKey]?: number | Reading };

export function point(id: number, states: OperatingPoint["states"], readings: Readings): OperatingPoint {
  const entries = Object.entries(readings).map(
    ([key, value]) => [key as ReadingKey, typeof value === "number" ? reading(value) : value!] as const,
  );
  return { id, recording: 0, start: 10 * id, end: 10 * id + 8, states, region: String(id), readings: new Map(entries) };
}

/** 2 L, four cylinders, petrol, metered, narrow probe; what is not stated left out. */
export const ENGINE: EngineDescription = {
  note: "an invented engine",
  displacement: 2e-3,
  cylinders: 4,
  strokes: 4,
  banks: 1,
  compressionRatio: 10,
  valveTiming: "fixed",
  fuel: "petrol",
  ignition: "spark",
  induction: "natural",
  injection: "port",
  metering: "meter",
  meters: [],
  manifoldSensor: null,
  volumetricEfficiency: null,
  injectors: null,
  lambdaProbe: "narrow",
  independentProbe: null,
  site: { barometer: 100e3, outside: 293.15 },
  trimLimits: 0.25,
  trims: "multiplied",
  egr: "none",
  egrControl: null,
  purge: "none",
  secondaryAir: "none",
  intakeTemperatureAt: "meter",
  manifoldVolume: 3e-3,
  chargeVolume: 5e-3,
  throttleBore: 0.06,
};
