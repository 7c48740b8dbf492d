/** What the sensors say with the engine standing: no air in it, so that each is judged by itself. */
import type { OperatingData } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import type { Assumptions } from "./assumptions.ts";
import type { MeterSlot } from "./meter-slots.ts";
import { coldSoak } from "./standing/cold-soak.ts";
import { meterAtRest } from "./standing/meter-at-rest.ts";
import { pressureAtRest } from "./standing/pressure-at-rest.ts";
import type { StandingObservation, TallyWitness } from "./tally-model.ts";

/** `offsetColumn`: the column of the basis that holds the pressure sensor's offset. */
export function standingObservations(
  data: Pick<OperatingData, "keyOn" | "sites">,
  engine: EngineDescription,
  slots: readonly MeterSlot[],
  witnesses: readonly TallyWitness[],
  a: Assumptions,
  columns: number,
  offsetColumn: number | null,
): StandingObservation[] {
  const none = new Float64Array(columns);
  const offset = new Float64Array(columns);
  if (offsetColumn !== null) offset[offsetColumn] = a.pressureOffset / 1000;
  const heard = slots.filter((slot) => witnesses.includes(slot.id));
  return [
    ...(witnesses.includes("pressure") ? pressureAtRest(data, engine, a, offset) : []),
    ...meterAtRest(data.keyOn, heard, a, none),
    ...coldSoak(data, engine, a, none),
  ];
}
