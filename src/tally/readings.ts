/** Readings of one operating point as the witnesses need them: the meter's flow, the fuel side's factor. */

import type { OperatingPoint, Reading, ReadingKey } from "../channels/index.ts";
import { combineTrims, type EngineDescription } from "../engine/index.ts";
import { dryAirDensity, type MoistAir } from "../gas/index.ts";
import { meterFlow, type PreparedMeter } from "../meters/index.ts";
import type { MeterSlot } from "./meter-slots.ts";

/** A value with its relative variance. */
export type Measured = { readonly value: number; readonly variance: number };

/** Mass flow in kg/s as one meter has it (of its own bank where it serves one); null where not recorded. */
export function meterReading(point: OperatingPoint, slot: MeterSlot, air: MoistAir): Measured | null {
  const flow = find(point, "meterFlow", slot.bank);
  if (flow !== null && flow.mean > 0) return { value: flow.mean, variance: flow.variance / flow.mean ** 2 };
  const volume = find(point, "meterVolumeFlow", slot.bank);
  if (volume !== null && volume.mean > 0) {
    return {
      value: volume.mean * dryAirDensity(air.pressure, air.temperature),
      variance: volume.variance / volume.mean ** 2,
    };
  }
  if (slot.prepared === null) return null;
  const raw = find(point, RAW_SIGNAL[slot.prepared.signalUnit], slot.bank);
  return raw === null ? null : throughCurve(slot.prepared, raw, air);
}

/** The channel that carries the signal in which the curve is written. */
export const RAW_SIGNAL = { V: "meterVoltage", Hz: "meterFrequency", ms: "meterPeriod", ratio: "meterRatio" } as const;

/** Flow at the mean signal; its variance by the curve's slope over the signal's scatter. */
function throughCurve(meter: PreparedMeter, raw: Reading, air: MoistAir): Measured | null {
  const middle = meterFlow(meter, raw.mean, air).massFlow;
  if (!(middle > 0)) return null;
  const step = Math.max(Math.sqrt(raw.variance), 1e-6 * Math.abs(raw.mean));
  const change =
    (meterFlow(meter, raw.mean + step, air).massFlow - meterFlow(meter, raw.mean - step, air).massFlow) / 2;
  return Number.isFinite(change) ? { value: middle, variance: (change / middle) ** 2 } : null;
}

export type TrimReading = {
  /** total trim, 0.1 = ten per cent more fuel */
  readonly trim: number;
  /** variance of ln(1 + trim) as read */
  readonly variance: number;
  /** variance of ln(lambda) about its target, where the trim still moves towards it */
  readonly unsettled: number;
  /** +1 at the upper limit, -1 at the lower, 0 free */
  readonly atLimit: 1 | -1 | 0;
};

/** Total trim of a bank; null where no trim is recorded. */
export function trimReading(point: OperatingPoint, engine: EngineDescription, bank: 1 | 2 | null): TrimReading | null {
  const total = find(point, "totalTrim", bank);
  const short = find(point, "shortTrim", bank);
  const long = find(point, "longTrim", bank);
  if (total === null && short === null && long === null) return null;
  const trim =
    total !== null ? total.mean : combineTrims(short?.mean ?? 0, long?.mean ?? 0, engine.trims ?? "multiplied");
  if (!(trim > -0.95)) return null;
  const slope = total?.slope ?? (short?.slope ?? 0) + (long?.slope ?? 0);
  const scatter = total?.variance ?? (short?.variance ?? 0) + (long?.variance ?? 0);
  const variance = scatter / (1 + trim) ** 2;
  const unsettled = ((slope * SETTLING_TIME) / (1 + trim)) ** 2;
  return { trim, variance, unsettled, atLimit: limitReached([total, short, long], engine.trimLimits ?? 0.25) };
}

/** A trim that touches its limit, within one J1979 step (100/128 %), may have wanted more all the while. */
function limitReached(readings: readonly (Reading | null)[], limit: number): 1 | -1 | 0 {
  for (const reading of readings) {
    if (reading === null) continue;
    if (reading.high >= limit - TRIM_STEP) return 1;
    if (reading.low <= -limit + TRIM_STEP) return -1;
  }
  return 0;
}

/** s; a trim that still moves has this long to go at its present pace. Common practice, no source. */
const SETTLING_TIME = 4;

/** resolution of a fuel trim [j1979] */
const TRIM_STEP = 1 / 128;

/** A reading of the bank asked for, or the one without a bank. */
export function find(
  point: OperatingPoint,
  quantity: Exclude<ReadingKey, `${string}:${number}`>,
  bank: 1 | 2 | null,
): Reading | null {
  const own = bank === null ? undefined : point.readings.get(`${quantity}:${bank}` as ReadingKey);
  return (
    own ??
    point.readings.get(quantity) ??
    (bank === null ? point.readings.get(`${quantity}:1` as ReadingKey) : undefined) ??
    null
  );
}
