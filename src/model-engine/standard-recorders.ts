/** The recorders used by the demo, the tests and the case families. */
import type { MeterDesign } from "./engine-design.ts";
import type { Recorder } from "./recorder.ts";
import type { RecorderChannelId } from "./recorder-channel-table.ts";
import { PLAIN_STYLE, type TableStyle } from "./table-text.ts";

export const FAMILIES = [
  "petrol-with-meter",
  "petrol-with-pressure",
  "boosted-both",
  "petrol-with-vane",
  "petrol-with-vortex",
  "diesel-with-egr",
] as const;
export type Family = (typeof FAMILIES)[number];

const COMMON: readonly RecorderChannelId[] = ["speed", "manifoldPressure", "intakeTemperature", "coolant", "throttle"];
const MIXTURE: readonly RecorderChannelId[] = ["shortTrim", "longTrim", "loopState", "lambdaCommanded"];
const SLOW: readonly RecorderChannelId[] = ["barometer", "battery", "roadSpeed"];

export const TESTER_CHANNELS: { readonly [family in Family]: readonly RecorderChannelId[] } = {
  "petrol-with-meter": [...COMMON, "meterFlow", ...MIXTURE, "probeVoltage", ...SLOW],
  "petrol-with-pressure": [...COMMON, ...MIXTURE, "probeVoltage", "calculatedLoad", ...SLOW],
  "boosted-both": [...COMMON, "meterFlow", ...MIXTURE, "lambda", "pedal", ...SLOW],
  "petrol-with-vane": [...COMMON, "meterFlow", ...MIXTURE, "probeVoltage", ...SLOW],
  "petrol-with-vortex": [...COMMON, "meterFlow", ...MIXTURE, "probeVoltage", ...SLOW],
  "diesel-with-egr": [...COMMON, "meterFlow", "pedal", "ambientTemperature", "barometer", "roadSpeed"],
};

/** One channel every 70 ms, each row repeating what was read last. */
export function standardTester(family: Family, comments: readonly string[] = []): Recorder {
  const style: TableStyle = comments.length === 0 ? PLAIN_STYLE : { ...PLAIN_STYLE, comments };
  return {
    kind: "polled",
    channels: TESTER_CHANNELS[family],
    style,
    requestTime: 0.07,
    jitter: 0.01,
    rows: "each-reading",
  };
}

const RAW_SIGNALS: { readonly [kind in MeterDesign["kind"]]: RecorderChannelId } = {
  vane: "meterRatio",
  vortex: "meterFrequency",
  "hot-wire": "meterVoltage",
  "hot-film": "meterVoltage",
};

/** A workshop logger with raw volts and an independent wide probe. */
export function workshopLogger(
  rate: number,
  style: TableStyle = PLAIN_STYLE,
  meter: MeterDesign["kind"] | null = "hot-wire",
): Recorder {
  return {
    kind: "logger",
    rate,
    style,
    channels: [
      "speed",
      "manifoldPressure",
      ...(meter === null ? [] : [RAW_SIGNALS[meter]]),
      "intakeTemperature",
      "coolant",
      "throttle",
      "shortTrim",
      "longTrim",
      "lambdaIndependent",
      "pulseWidth",
      "battery",
      "barometer",
    ],
  };
}
