/** The recorders used by the demo, the tests and the case families. */
import type { Recorder } from "./recorder.ts";
import type { RecorderChannelId } from "./recorder-channels.ts";
import { PLAIN_STYLE, type TableStyle } from "./table-text.ts";

export type Family = "petrol-with-meter" | "petrol-with-pressure" | "boosted-both" | "diesel-with-egr";

const COMMON: readonly RecorderChannelId[] = ["speed", "manifoldPressure", "intakeTemperature", "coolant", "throttle"];
const MIXTURE: readonly RecorderChannelId[] = ["shortTrim", "longTrim", "loopState", "lambdaCommanded"];
const SLOW: readonly RecorderChannelId[] = ["barometer", "battery", "roadSpeed"];

export const TESTER_CHANNELS: { readonly [family in Family]: readonly RecorderChannelId[] } = {
  "petrol-with-meter": [...COMMON, "meterFlow", ...MIXTURE, "probeVoltage", ...SLOW],
  "petrol-with-pressure": [...COMMON, ...MIXTURE, "probeVoltage", "calculatedLoad", ...SLOW],
  "boosted-both": [...COMMON, "meterFlow", ...MIXTURE, "lambda", "pedal", ...SLOW],
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

/** A workshop logger with raw volts and an independent wide probe. */
export function workshopLogger(rate: number, style: TableStyle = PLAIN_STYLE): Recorder {
  return {
    kind: "logger",
    rate,
    style,
    channels: [
      "speed",
      "manifoldPressure",
      "meterVoltage",
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
