/** Sensors that do not move where they must, or stand at a value that says "not connected" or "not given". */
import type { QuantityId } from "../quantity-id.ts";
import { inUsualUnit } from "../recognition/expectations.ts";

export type Evidence = {
  readonly quantity: QuantityId;
  readonly values: Float64Array;
  /** s from first to last */
  readonly duration: number;
  /** whether the engine did different things meanwhile (speed varied by more than a fifth) */
  readonly engineVaried: boolean;
};

const ZERO_C = 273.15;
/** Readings of a temperature input that is open, shorted or not served: common practice, no source; -40 is the lowest of SAE J1979. */
const STOPS = [ZERO_C - 40, ZERO_C, ZERO_C + 150, ZERO_C + 215];
const AIR_TEMPERATURES: readonly QuantityId[] = ["intakeTemperature", "chargeTemperature"];
const TEMPERATURES: readonly QuantityId[] = [
  ...AIR_TEMPERATURES,
  "ambientTemperature",
  "coolantTemperature",
  "oilTemperature",
  "fuelTemperature",
  "exhaustTemperature",
  "catalystTemperature",
];
/** These move with the engine within seconds. */
const LIVELY: readonly QuantityId[] = [
  "manifoldPressure",
  "meterFlow",
  "meterVolumeFlow",
  "meterVoltage",
  "meterFrequency",
  "meterPeriod",
  "meterRatio",
  "calculatedLoad",
  "absoluteLoad",
  "pulseWidth",
  "lambda",
  "lambdaIndependent",
  "probeVoltage",
  "shortTrim",
];
/** Zero is no mixture: an engine computer answers it for what it does not know. */
const NEVER_ZERO: readonly QuantityId[] = [
  "lambda",
  "lambdaCommanded",
  "lambdaIndependent",
  "equivalenceRatioCommanded",
];

/** s a temperature may stand still at a stop, and elsewhere while the engine does different things */
const STOP_DURATION = 60;
const STILL_DURATION = 900;
const LIVELY_DURATION = 60;

export function deadReason({ quantity, values, duration, engineVaried }: Evidence): string | null {
  const first = values[0];
  if (first === undefined || values.length < 5 || values.some((value) => value !== first)) return null;
  const stands = `stands at ${inUsualUnit(quantity, first)} throughout`;
  if (NEVER_ZERO.includes(quantity) && first === 0) return `${stands}: zero means not given`;
  if (
    TEMPERATURES.includes(quantity) &&
    STOPS.some((stop) => Math.abs(stop - first) < 0.6) &&
    duration >= STOP_DURATION
  ) {
    return `${stands}: an open, shorted or unserved input reads so`;
  }
  if (AIR_TEMPERATURES.includes(quantity) && engineVaried && duration >= STILL_DURATION) {
    return `${stands} while the engine's running varied`;
  }
  if (LIVELY.includes(quantity) && engineVaried && duration >= LIVELY_DURATION)
    return `${stands} while the engine's running varied`;
  return null;
}
