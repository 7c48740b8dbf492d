/**
 * With the engine standing and the key on, the manifold sensor must read the barometer.
 *
 * Equation    p_read - p_a = b + error, in kPa; b the sensor's offset (a healthy one's spread is a column of the basis)
 * Source      common practice, no source
 */

import type { OperatingData } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import type { Assumptions } from "./assumptions.ts";
import { siteOf } from "./point-physics.ts";
import type { StandingObservation } from "./tally-model.ts";

export function standingObservations(
  data: Pick<OperatingData, "keyOn" | "sites">,
  engine: EngineDescription,
  a: Assumptions,
  columns: number,
  offsetColumn: number | null,
): StandingObservation[] {
  const out: StandingObservation[] = [];
  for (const reading of data.keyOn) {
    const pressure = reading.readings.get("manifoldPressure");
    const recorded = reading.readings.get("barometer");
    const barometer = recorded?.mean ?? siteOf(engine, data, reading.recording).barometer;
    if (pressure === undefined || barometer === null) continue;
    const basis = new Float64Array(columns);
    if (offsetColumn !== null) basis[offsetColumn] = a.pressureOffset / 1000;
    out.push({
      kind: "pressure-against-barometer",
      unit: "kPa",
      meter: null,
      reading: (pressure.mean - barometer) / 1000,
      variance: (pressure.variance + (recorded?.variance ?? 0) + a.barometer ** 2) / 1e6,
      basis,
      where: `recording ${reading.recording + 1}, ${reading.start.toFixed(0)} to ${reading.end.toFixed(0)} s`,
    });
  }
  // The same sensor against the same barometer is one fact, however long the key was on.
  return out.slice(0, 1);
}
