/** The columns read, with their time, into a recording; what was met on the way into warnings. */
import { type Failure, failure, QUALITY, type Result, success, type Warning } from "../quantities/index.ts";
import { combineTables } from "./combine-tables.ts";
import type { Layout } from "./delimited/layout.ts";
import type { TableReader } from "./delimited/table-reader.ts";
import { fromLongFormat } from "./long-format.ts";
import { rawTableOf } from "./raw-table.ts";
import type { RawColumn, ReadOptions, Recording, RecordingReason } from "./recording.ts";
import { Remarks } from "./remarks.ts";
import { buildTime } from "./time/build-time.ts";
import { findTimeSource } from "./time/find-time.ts";

export function assembleRecording(
  reader: TableReader,
  encoding: string,
  options: ReadOptions,
): Result<Recording, RecordingReason> {
  const { tables, remarks, comments } = reader;
  const file = options.name;
  const { layout } = tables[0]!;
  const combined = combineTables(tables.map(rawTableOf));
  const long = fromLongFormat(combined.table);
  const { columns, rows, lines, restarts } = long ?? combined.table;
  const untimed = leaveOutWordedTimes(columns, lines);
  const refused = refuseUnusable(columns, rows, layout, file);
  if (refused !== null) return refused;
  const preamble = [...layout.preamble, ...comments];
  const time = buildTime(columns, { rows, lines, restarts, rate: options.rate, preamble, file });
  if (!time.ok) return time;
  const commas = layout.columns.filter((column) => column.format.decimal === ",").length;
  return success({
    name: options.name,
    rows,
    columns,
    time: time.value.base,
    stretches: time.value.stretches,
    lines,
    encoding,
    delimiter: layout.delimiter,
    decimalMark: commas > layout.columns.length / 2 ? "," : ".",
    preamble,
    headerLine: layout.headerLine,
    fastShare:
      reader.scannedRows /
      Math.max(
        1,
        tables.reduce((sum, table) => sum + table.store.rows, 0),
      ),
    warnings: [
      ...rowWarnings(remarks, layout.columns.length),
      ...headerWarnings(layout.headerCells),
      ...tables.flatMap((table) => table.layout.warnings),
      ...combined.warnings,
      ...(long === null ? [] : [longWarning(columns.length)]),
      ...untimed,
      ...wordWarnings(columns),
      ...time.value.warnings,
    ],
  });
}

function refuseUnusable(
  columns: readonly RawColumn[],
  rows: number,
  layout: Layout,
  file: string,
): Failure<RecordingReason> | null {
  if (rows === 0) {
    return failure(
      "no-rows",
      layout.headerCells === null ? "No row of values was found." : "There is a header, but no row of values below it.",
      "Check that the recording ran; give a file with at least one row of values.",
      layout.headerLine === null ? { file } : { file, line: layout.headerLine },
    );
  }
  const numeric = columns.some((column) => column.form === "number" && column.quality.includes(QUALITY.good));
  if (numeric) return null;
  return failure(
    "no-numeric-column",
    "No column holds numbers.",
    "Give a recording with measured values as numbers.",
    layout.headerLine === null ? { file } : { file, line: layout.headerLine },
  );
}

/**
 * Rows with a word where the time stands ("Max;4812;97") are no samples: their cells count as missing. Their place in
 * time is that of their neighbours.
 */
function leaveOutWordedTimes(columns: readonly RawColumn[], lines: Uint32Array): Warning[] {
  const source = findTimeSource(columns);
  const worded = source === null ? null : source.column.texts;
  if (worded === null || worded.rows.length === 0) return [];
  const remarks = new Remarks();
  for (const row of worded.rows) {
    remarks.add("time-worded", lines[row]!);
    for (const { values, quality } of columns) {
      values[row] = Number.NaN;
      quality[row] = QUALITY.missing;
    }
  }
  return remarks.warning(
    "time-worded",
    (n, at) => `${n === 1 ? "1 row" : `${n} rows`} with a word in place of the time left out (${at}).`,
  );
}

function longWarning(columns: number): Warning {
  return {
    code: "long-format",
    text: `One reading a row (long format): turned into ${columns} columns, one a channel.`,
  };
}

/** Columns of numbers with words among them: the words are kept, the samples count as no number. */
function wordWarnings(columns: readonly RawColumn[]): Warning[] {
  const mixed = columns.filter(
    (column) =>
      column.texts !== null && column.texts.rows.length < 0.5 * column.values.length && column.form === "number",
  );
  return mixed.map((column) => {
    const { rows, dictionary } = column.texts!;
    const words = dictionary.slice(0, 3).map((word) => `"${word.slice(0, 20)}"`);
    const what = `${rows.length === 1 ? "One cell" : `${rows.length} cells`} of "${column.headerText}" (column ${column.position})`;
    return {
      code: "words-among-numbers",
      text: `${what} hold no number: ${words.join(", ")}${dictionary.length > 3 ? ", ..." : ""}.`,
    };
  });
}

function headerWarnings(headerCells: readonly string[] | null): Warning[] {
  if (headerCells !== null) return [];
  return [{ code: "no-header", text: "The table has no row of names; columns are known by their number only." }];
}

function rowWarnings(remarks: Remarks, count: number): Warning[] {
  const rows = (n: number) => (n === 1 ? "1 row" : `${n} rows`);
  return [
    ...remarks.warning("cut", (_, at) => `The file ends within a row (${at}): read up to the cut.`),
    ...remarks.warning("too-short", (n, at) => `${rows(n)} with fewer than ${count} cells left out (${at}).`),
    ...remarks.warning("too-long", (n, at) => `${rows(n)} with more than ${count} cells left out (${at}).`),
    ...remarks.warning("unbalanced-quote", (n, at) => `${rows(n)} with an unclosed quote left out (${at}).`),
    ...remarks.warning("no-values", (n, at) => `${rows(n)} without any value left out (${at}).`),
    ...remarks.warning("header-again", (n, at) => `The header is repeated ${n === 1 ? "once" : `${n} times`} (${at}).`),
    ...remarks.warning("nul-bytes", (n, at) => `NUL bytes in ${n === 1 ? "one line" : `${n} lines`} ignored (${at}).`),
  ];
}
