/**
 * The meter's word on the air.
 *
 * Equation    y = ln(M - storage) - ln(1 + w)
 * Symbols     M kg/s moist air as metered | w humidity ratio | storage kg/s taken up by the volume between meter and valves
 * Source      design of the tally; storage from the ideal gas law
 */
import type { MeterSlot } from "./meter-slots.ts";
import { meterReading } from "./readings.ts";
import { HUMIDITY_RATIO } from "./tally-model.ts";
import { addBound, dosesBy, effectOn, manifoldVolume, type RowContext, storageRate } from "./witness-row.ts";

/** A storage as large as the flow itself means the point is no operating point for this witness. */
const MOST_STORAGE = 0.7;
/** a storage is known to half of itself */
const STORAGE_DOUBT = 0.5;

/** `stopped`: the reading stands at the end of the curve. */
export function addMeter(context: RowContext, slot: MeterSlot, stopped: boolean): void {
  const { point, i, engine, physics, row, fuels, dosedBy } = context;
  const temperature = physics.intakeTemperature[i]!;
  const reading = meterReading(point, slot, {
    pressure: physics.barometer[i]!,
    temperature,
    humidityRatio: HUMIDITY_RATIO,
  });
  if (reading === null) return;
  const flow = reading.value * slot.share;
  const fed =
    dosesBy(engine) === "meter"
      ? fuels.filter((f) => slot.bank === null || f.bank === null || f.bank === slot.bank)
      : [];
  for (const fuel of fed) dosedBy.set(fuel.id, Math.log(flow));
  const storage = storageRate(point, manifoldVolume(engine) + (engine.chargeVolume ?? 0), temperature);
  if (Math.abs(storage) > MOST_STORAGE * flow) {
    row.shared.push({ variance: reading.variance, effect: effectOn(fed.map((f) => f.id)) });
    return;
  }
  const value = Math.log(flow - storage) - Math.log1p(HUMIDITY_RATIO);
  const doubt = ((STORAGE_DOUBT * storage) / flow) ** 2;
  // What the engine computer doses by stops with the meter; the air does not.
  if (stopped) {
    row.shared.push({ variance: reading.variance, effect: effectOn(fed.map((f) => f.id)) });
    addBound(context, slot.id, value, 1, reading.variance + doubt);
    return;
  }
  row.shared.push({ variance: reading.variance, effect: effectOn([slot.id, ...fed.map((f) => f.id)]) });
  row.y.set(slot.id, value);
  row.shared.push({ variance: doubt, effect: effectOn([slot.id]) });
}
