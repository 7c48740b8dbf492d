/** The time of every row, in s since the first, and the stretches between which time is not continuous. */
import { failure, type Result, success, type Warning } from "../../quantities/index.ts";
import type { RawColumn, RecordingReason, RowStretch, TextLine, TimeBase, TimeKind } from "../recording.ts";
import { findTimeSource, type TimeSource } from "./find-time.ts";
import { type TimeScale, timeScaleOf } from "./number-time.ts";
import { medianStep, orderStamps } from "./order-stamps.ts";
import { rateInPreamble } from "./preamble-rate.ts";

export type TimeQuestion = {
  readonly rows: number;
  readonly lines: Uint32Array;
  /** rows before which a header was repeated */
  readonly restarts: readonly number[];
  /** rows a second, as the user says */
  readonly rate: number | undefined;
  /** may state a rate too */
  readonly preamble: readonly TextLine[];
  readonly file: string;
};

export type TimeAnswer = {
  readonly base: TimeBase | null;
  readonly stretches: readonly RowStretch[];
  readonly warnings: readonly Warning[];
};

export function buildTime(columns: readonly RawColumn[], question: TimeQuestion): Result<TimeAnswer, RecordingReason> {
  const { rate, rows, file } = question;
  if (rate !== undefined && !(rate > 0 && Number.isFinite(rate))) {
    return failure("bad-rate", `A rate of ${rate} Hz is no rate.`, "State the rows a second, for example 10.", {
      file,
    });
  }
  const source = findTimeSource(columns);
  if (rate === undefined && source !== null && source.kind !== "sample-number") {
    return success(stampedTime(source, question));
  }
  const stated = rate ?? rateInPreamble(question.preamble);
  if (stated === null) return success({ base: null, stretches: splitAt(question.restarts, rows), warnings: [] });
  const says = rate === undefined ? "as the file states" : "as stated";
  if (source?.kind === "sample-number") return success(numberedTime(source.column, stated, says, question));
  return success(evenTime(stated, says, question));
}

/** Rows at a stated rate. */
function evenTime(rate: number, says: string, question: TimeQuestion): TimeAnswer {
  const interval = 1 / rate;
  const seconds = Float64Array.from({ length: question.rows }, (_, i) => i * interval);
  const how = `${rate} rows a second, ${says}`;
  const base: TimeBase = { kind: "stated-rate", seconds, columns: [], resolution: 0, interval, how };
  return { base, stretches: splitAt(question.restarts, question.rows), warnings: [] };
}

/** Sample numbers at a stated rate: numbers that are left out are a gap. */
function numberedTime(column: RawColumn, rate: number, says: string, question: TimeQuestion): TimeAnswer {
  const step = medianStep(column.values) || 1;
  const ordered = orderStamps(column.values, 1 / (rate * step), null, question);
  const base: TimeBase = {
    kind: "sample-number",
    seconds: ordered.seconds,
    columns: [column.position],
    resolution: 0,
    interval: ordered.interval,
    how: `sample number in column ${column.position}, ${rate} a second ${says}`,
  };
  return { base, stretches: ordered.stretches, warnings: ordered.warnings };
}

function stampedTime(source: Exclude<TimeSource, { kind: "sample-number" }>, question: TimeQuestion): TimeAnswer {
  const { column } = source;
  const raw =
    source.kind !== "number" && source.date !== null ? added(source.date.values, column.values) : column.values;
  const step = medianStep(raw);
  const first = raw.find((value) => !Number.isNaN(value)) ?? 0;
  const scale: TimeScale =
    source.kind === "number"
      ? timeScaleOf(column.unitText, column.headerText, first, step)
      : { factor: 1, unit: "s", stated: true };
  const wraps = source.kind === "clock" && source.date === null ? 86_400 : null;
  const ordered = orderStamps(raw, scale.factor, wraps, question);
  const positions =
    source.kind !== "number" && source.date !== null ? [source.date.position, column.position] : [column.position];
  const base: TimeBase = {
    kind: source.kind,
    seconds: ordered.seconds,
    columns: positions,
    resolution: ordered.resolution,
    interval: ordered.interval,
    how: describe(source.kind, positions, scale, ordered.interval, ordered.spread),
  };
  const guessed: Warning[] =
    scale.stated || scale.unit === "s"
      ? []
      : [{ code: "time-unit-guessed", text: `The time column states no unit; its size and steps say ${scale.unit}.` }];
  return { base, stretches: ordered.stretches, warnings: [...guessed, ...ordered.warnings] };
}

function describe(
  kind: TimeKind,
  positions: readonly number[],
  scale: TimeScale,
  interval: number,
  spread: boolean,
): string {
  const what =
    { clock: "clock time", "date-time": "date and time", number: `time in ${scale.unit}` }[kind as "clock"] ?? kind;
  const where = positions.length === 1 ? `column ${positions[0]}` : `columns ${positions.join(" and ")}`;
  const every = `a row every ${Number(interval.toPrecision(3))} s`;
  return `${what} in ${where}, ${every}${spread ? ", rows with the same stamp spread evenly" : ""}`;
}

function added(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((value, i) => value + b[i]!);
}

export function splitAt(restarts: readonly number[], rows: number): RowStretch[] {
  const starts = [0, ...restarts.filter((row) => row > 0 && row < rows)];
  return starts.map((startRow, i) => ({
    startRow,
    endRow: starts[i + 1] ?? rows,
    why: i === 0 ? null : "the header is repeated: recording began anew",
  }));
}
