/** The recorders used by the demo, the tests and the case families. */
import type { EngineDesign, MeterDesign } from "./engine-design.ts";
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
  "diesel-with-egr": [...COMMON, "meterFlow", "egrCommanded", "pedal", "ambientTemperature", "barometer", "roadSpeed"],
};

const SECOND_BANK: Partial<Record<RecorderChannelId, RecorderChannelId>> = {
  shortTrim: "shortTrim2",
  longTrim: "longTrim2",
  probeVoltage: "probeVoltage2",
  lambda: "lambda2",
};

/** What a tester shows of this engine: the family's channels, with its probe, its second bank and its EGR valve. */
export function testerChannels(family: Family, design: EngineDesign): readonly RecorderChannelId[] {
  const own = TESTER_CHANNELS[family].map((id) =>
    id === "probeVoltage" && design.lambdaProbe === "wide" ? ("lambda" as const) : id,
  );
  const banked = design.banks === 2 ? own.flatMap((id) => [id, SECOND_BANK[id] ?? []].flat()) : own;
  const valve = design.egrValveArea !== null && !banked.includes("egrCommanded");
  return valve ? [...banked, "egrCommanded"] : banked;
}

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
  return { kind: "logger", rate, style, channels: wired(meter, ["shortTrim", "longTrim"], ["pulseWidth"]) };
}

/** What a workshop logger is wired to on this engine; a diesel has no trims to tell, but a pedal. */
export function loggerChannels(design: EngineDesign): readonly RecorderChannelId[] {
  const meter = design.meter?.kind ?? null;
  if (design.ignition === "compression") return wired(meter, ["pedal"], []);
  const second = design.banks === 2 ? (["shortTrim2", "longTrim2"] as const) : [];
  return wired(meter, ["shortTrim", "longTrim", ...second], ["pulseWidth"]);
}

function wired(
  meter: MeterDesign["kind"] | null,
  computer: readonly RecorderChannelId[],
  injection: readonly RecorderChannelId[],
): readonly RecorderChannelId[] {
  return [
    "speed",
    "manifoldPressure",
    ...(meter === null ? [] : [RAW_SIGNALS[meter]]),
    "intakeTemperature",
    "coolant",
    "throttle",
    ...computer,
    "lambdaIndependent",
    ...injection,
    "battery",
    "barometer",
  ];
}
