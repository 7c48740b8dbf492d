/**
 * Samples no sensor of this kind can have measured: outside what the quantity can be, at the stop of the number that
 * carries it, or, for air and coolant temperatures, in an excursion that begins with a jump no mass can follow and
 * comes back. They keep their values and get a quality code.
 */
import { QUALITY } from "../../quantities/index.ts";
import { type QuantityId, quantityInfo } from "../quantity-id.ts";

/**
 * K/s. An intake air sensor's time constant is some seconds, charge air changes by tens of kelvin within several; 15 K/s
 * over a whole reading is beyond both. Common practice, no source.
 */
const FASTEST = 15;
/** K back to the level before, for the excursion to be over */
const RETURN_WITHIN = 8;
/** s, an excursion that lasts longer is a new level, not an excursion */
const LONGEST = 240;
const SETTLED = 5;
const LEVEL_READINGS = 15;

const TEMPERATURES: readonly QuantityId[] = [
  "intakeTemperature",
  "chargeTemperature",
  "ambientTemperature",
  "coolantTemperature",
  "oilTemperature",
  "fuelTemperature",
];

/** SAE J1979 carries manifold pressure in one byte of kPa: what lies above reads 255. */
const MANIFOLD_STOP = 255_000;

export function markImpossible(
  quantity: QuantityId,
  times: Float64Array,
  values: Float64Array,
  quality: Uint8Array,
): void {
  const { low, high } = quantityInfo(quantity);
  for (let i = 0; i < values.length; i++) {
    if (quality[i] !== QUALITY.good) continue;
    const value = values[i]!;
    if (!(value >= low && value <= high)) quality[i] = QUALITY.outsideValidity;
    else if (quantity === "manifoldPressure" && value === MANIFOLD_STOP) quality[i] = QUALITY.clipped;
  }
  if (TEMPERATURES.includes(quantity)) markExcursions(times, values, quality);
}

function markExcursions(times: Float64Array, values: Float64Array, quality: Uint8Array): void {
  let i = 1;
  while (i < values.length) {
    const step = Math.abs(values[i]! - values[i - 1]!);
    const span = Math.max(times[i]! - times[i - 1]!, 1e-3);
    const usable = quality[i] === QUALITY.good && quality[i - 1] === QUALITY.good;
    if (!usable || step < RETURN_WITHIN || step / Math.max(span, 1) < FASTEST) {
      i++;
      continue;
    }
    const end = endOfExcursion(times, values, i);
    for (let k = i; k < end; k++) if (quality[k] === QUALITY.good) quality[k] = QUALITY.outsideValidity;
    i = Math.max(end, i + 1);
  }
}

/** First sample after which the values stay near the level before `start`; `start` where they never come back. */
function endOfExcursion(times: Float64Array, values: Float64Array, start: number): number {
  const before = values.slice(Math.max(0, start - LEVEL_READINGS), start).sort();
  const level = before[before.length >> 1]!;
  let settled = 0;
  for (let k = start; k < values.length; k++) {
    if (times[k]! - times[start]! > LONGEST) return start;
    settled = Math.abs(values[k]! - level) <= RETURN_WITHIN ? settled + 1 : 0;
    if (settled === SETTLED) return k - SETTLED + 1;
  }
  return values.length; // the recording ends within it
}
