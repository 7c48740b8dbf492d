/**
 * With the engine standing and the key on, before the start or run down after it, the manifold sensor must read the barometer.
 *
 * Equation    p_read - p_a = b + error, in kPa; b the sensor's offset (a healthy one's spread is a column of the basis)
 *             mean over the passages, each weighed by its own scatter; the barometer's error once
 * Limits      the same sensor against the same barometer is one fact, however long or often the key was on. An engine computer that
 *             takes its barometer from this very sensor agrees by construction
 * Source      common practice, no source
 */
import type { KeyOnReading, OperatingData } from "../../channels/index.ts";
import type { EngineDescription } from "../../engine/index.ts";
import type { Assumptions } from "../assumptions.ts";
import { siteOf } from "../point-physics.ts";
import type { StandingObservation } from "../tally-model.ts";
import { placeOf } from "./place-of.ts";

/** Pa; what a healthy manifold still does between two passages (wind, temperature of the sensor) */
const BETWEEN = 100;

type Passage = { readonly reading: KeyOnReading; readonly difference: number; readonly variance: number };

export function pressureAtRest(
  data: Pick<OperatingData, "keyOn" | "sites">,
  engine: EngineDescription,
  a: Assumptions,
  basis: Float64Array,
): StandingObservation[] {
  const passages = data.keyOn.flatMap((reading): Passage[] => {
    const pressure = reading.readings.get("manifoldPressure");
    const recorded = reading.readings.get("barometer");
    const barometer = recorded?.mean ?? siteOf(engine, data, reading.recording).barometer;
    if (pressure === undefined || barometer === null) return [];
    const variance = pressure.variance + (recorded?.variance ?? 0) + BETWEEN ** 2;
    return [{ reading, difference: pressure.mean - barometer, variance }];
  });
  if (passages.length === 0) return [];
  const weight = passages.reduce((sum, p) => sum + 1 / p.variance, 0);
  const mean = passages.reduce((sum, p) => sum + p.difference / p.variance, 0) / weight;
  return [
    {
      kind: "pressure-against-barometer",
      unit: "kPa",
      meter: null,
      reading: mean / 1000,
      variance: (1 / weight + a.barometer ** 2) / 1e6,
      basis,
      where: placeOf(passages.map((p) => p.reading)),
    },
  ];
}
