/** What the sensors say with no air in it: engine standing, cold, and what the intake loses at full load. Each is judged by itself. */
import type { OperatingData } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import type { Assumptions } from "./assumptions.ts";
import type { MeterSlot } from "./meter-slots.ts";
import { coldSoak } from "./standing/cold-soak.ts";
import { fullLoadDrop } from "./standing/full-load-drop.ts";
import { meterAtRest } from "./standing/meter-at-rest.ts";
import { pressureAtRest } from "./standing/pressure-at-rest.ts";
import type { PointState, StandingObservation, TallyWitness } from "./tally-model.ts";

/** `offsetColumn`: the column of the basis that holds the pressure sensor's offset. */
export function standingObservations(
  data: OperatingData,
  engine: EngineDescription,
  slots: readonly MeterSlot[],
  witnesses: readonly TallyWitness[],
  physics: PointState,
  a: Assumptions,
  columns: number,
  offsetColumn: number | null,
): StandingObservation[] {
  const none = new Float64Array(columns);
  const offset = new Float64Array(columns);
  if (offsetColumn !== null) offset[offsetColumn] = a.pressureOffset / 1000;
  const heard = slots.filter((slot) => witnesses.includes(slot.id));
  return [
    ...(witnesses.includes("pressure")
      ? [...pressureAtRest(data, engine, a, offset), ...fullLoadDrop(data, engine, physics, a, offset)]
      : []),
    ...meterAtRest(data.keyOn, heard, a, none),
    ...coldSoak(data, engine, a, none),
  ];
}
