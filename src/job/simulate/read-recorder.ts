/** The recorder a call asks for: which, how fast, how it writes, and what goes wrong on the way to the file. */
import {
  type EngineDesign,
  type Family,
  loggerChannels,
  RECORDER_CHANNELS,
  type Recorder,
  type RecorderChannelId,
  standardTester,
  type TableStyle,
  testerChannels,
} from "../../model-engine/index.ts";
import { type Result, success } from "../../quantities/index.ts";
import { type OptionReason, optionFailure, readOption } from "../meter/option-values.ts";
import { readChoice, readNumber } from "./read-words.ts";
import { SIMULATE_DEFAULTS, type SimulateOptions } from "./simulate-options.ts";

export const RECORDERS = {
  tester: "a polled tester: one channel after the other, in SAE J1979 steps",
  logger: "a workshop logger: raw signals, all channels at once, and a wide probe of its own",
} as const;
export type RecorderName = keyof typeof RECORDERS;
export const RECORDER_NAMES = Object.keys(RECORDERS) as readonly RecorderName[];

export const ROWS = ["each-reading", "each-round", "sparse"] as const;
export const NAMES = ["long", "short"] as const;
export const UNITS = ["brackets", "parentheses", "row", "none"] as const;
export const DELIMITERS = ["comma", "semicolon", "tab"] as const;
export const DECIMAL_MARKS = ["point", "comma"] as const;
export const TIMES = ["seconds", "milliseconds", "clock"] as const;
export const LINE_ENDS = ["lf", "crlf"] as const;

/** The model engine goes in steps of 20 ms; between them a logger reads straight lines. */
const FASTEST_RATE = 100;
const LOGGER_RATE = 10;
/** of the time of one request, the standard deviation [common practice, no source] */
const JITTER = 0.15;
const DELIMITER = { comma: ",", semicolon: ";", tab: "\t" } as const;

type Wanted = {
  readonly family: Family;
  readonly design: EngineDesign;
  readonly options: SimulateOptions;
  /** lines before the header */
  readonly comments: readonly string[];
};

/** Also what it is called and how fast it goes, to be told. */
export type NamedRecorder = { readonly name: RecorderName; readonly rate: number; readonly recorder: Recorder };

export function readRecorder({ family, design, options, comments }: Wanted): Result<NamedRecorder, OptionReason> {
  const with_ = { ...SIMULATE_DEFAULTS, ...options };
  const name = readChoice(with_.recorder, "recorder", RECORDER_NAMES);
  if (!name.ok) return name;
  const style = readStyle(options, comments);
  if (!style.ok) return style;
  const rows = readChoice(with_.rows, "way of writing rows", ROWS);
  if (!rows.ok) return rows;
  if (name.value === "logger" && options.rows !== undefined)
    return optionFailure("A logger writes whole rows.", "Leave the way of writing rows away, or take the tester.");
  const tester = standardTester(family);
  const usual = name.value === "logger" || tester.kind === "logger" ? LOGGER_RATE : 1 / tester.requestTime;
  const rate =
    options.rate === undefined ? success(usual) : readNumber(options.rate, "rate", { low: 1, high: FASTEST_RATE });
  if (!rate.ok) return rate;
  const recorder: Recorder =
    name.value === "logger"
      ? { kind: "logger", rate: rate.value, style: style.value, channels: loggerChannels(design) }
      : {
          kind: "polled",
          channels: narrowed(testerChannels(family, design), design),
          style: style.value,
          requestTime: 1 / rate.value,
          jitter: JITTER / rate.value,
          rows: rows.value,
        };
  const blemishes = readBlemishes(options, recorder.channels);
  if (!blemishes.ok) return blemishes;
  return success({ name: name.value, rate: rate.value, recorder: { ...recorder, blemishes: blemishes.value } });
}

/** A wide probe is read as lambda; where the family has one and this engine a narrow one, its voltage is read. */
function narrowed(channels: readonly RecorderChannelId[], { lambdaProbe }: EngineDesign): RecorderChannelId[] {
  return channels.map((id) => (id === "lambda" && lambdaProbe === "narrow" ? "probeVoltage" : id));
}

function readStyle(options: SimulateOptions, comments: readonly string[]): Result<TableStyle, OptionReason> {
  const with_ = { ...SIMULATE_DEFAULTS, ...options };
  const mark = readChoice(with_.decimalMark, "decimal mark", DECIMAL_MARKS);
  if (!mark.ok) return mark;
  const delimiter = readChoice(
    options.delimiter ?? (mark.value === "comma" ? "semicolon" : "comma"),
    "delimiter",
    DELIMITERS,
  );
  if (!delimiter.ok) return delimiter;
  if (mark.value === "comma" && delimiter.value === "comma")
    return optionFailure("A comma cannot be both decimal mark and delimiter.", "Take the semicolon or the tab.");
  const names = readChoice(with_.names, "kind of names", NAMES);
  if (!names.ok) return names;
  const units = readChoice(with_.units, "place for units", UNITS);
  if (!units.ok) return units;
  const time = readChoice(with_.time, "kind of time", TIMES);
  if (!time.ok) return time;
  const lineEnd = readChoice(with_.lineEnd, "line end", LINE_ENDS);
  if (!lineEnd.ok) return lineEnd;
  return success({
    delimiter: DELIMITER[delimiter.value],
    decimalMark: mark.value === "comma" ? "," : ".",
    names: names.value,
    units: units.value,
    time: time.value,
    lineEnd: lineEnd.value === "crlf" ? "\r\n" : "\n",
    comments,
  });
}

function readBlemishes(
  options: SimulateOptions,
  channels: readonly RecorderChannelId[],
): Result<NonNullable<Recorder["blemishes"]>, OptionReason> {
  const { dropouts, dropoutLength } = { ...SIMULATE_DEFAULTS, ...options };
  const perMinute = readNumber(dropouts, "number of dropouts a minute", { low: 0, high: 20 });
  if (!perMinute.ok) return perMinute;
  const seconds = readOption(dropoutLength, "dropoutLength", { dimension: "time", low: 0.1, high: 60, unit: "s" });
  if (!seconds.ok) return seconds;
  const stuck: { readonly column: number; readonly from: number; readonly seconds: number }[] = [];
  for (const text of options.stuck ?? []) {
    const one = readStuck(text, channels);
    if (!one.ok) return one;
    stuck.push(one.value);
  }
  return success({
    ...(perMinute.value === 0 ? {} : { dropouts: { perMinute: perMinute.value, seconds: seconds.value } }),
    stuck,
  });
}

function readStuck(text: string, channels: readonly RecorderChannelId[]) {
  const [, name = "", from, length] = /^\s*(\S.*?)\s+from\s+(\S.*?)\s+for\s+(\S.*?)\s*$/.exec(text) ?? [];
  if (from === undefined || length === undefined)
    return optionFailure(
      `"${text}" does not say which channel sticks, from when, for how long.`,
      'Write for example "MAP from 60 s for 30 s".',
    );
  const heads = channels.map((id) => RECORDER_CHANNELS[id]);
  const column = heads.findIndex((head) => [head.longName, head.shortName].some((n) => sameWord(n, name)));
  if (column < 0)
    return optionFailure(
      `The recording has no channel "${name}" that could stick.`,
      `It has: ${heads.map((head) => head.shortName).join(", ")}.`,
    );
  const rule = { dimension: "time", low: 0, high: 3600, unit: "s" } as const;
  const start = readOption(from, "beginning", rule);
  if (!start.ok) return start;
  const seconds = readOption(length, "length", rule);
  return seconds.ok ? success({ column, from: start.value, seconds: seconds.value }) : seconds;
}

function sameWord(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}
