/** The layout of a table from the lines at its head: delimiter, header, units, number formats, time forms. */
import { type Failure, failure, type Result, success, type Warning, type Where } from "../../quantities/index.ts";
import { MAX_COLUMNS } from "../limits.ts";
import type { ColumnForm, RecordingReason, TextLine } from "../recording.ts";
import { repairDoubleEncoding } from "../text/decode.ts";
import type { DateOrder } from "../time/parse-time.ts";
import { type CellKind, kindOfCell } from "./cell-kind.ts";
import { chooseDelimiter, type DelimiterChoice, isValue } from "./choose-delimiter.ts";
import { isComment } from "./comment.ts";
import { findHeader, type HeaderFound, nameAndUnit } from "./find-header.ts";
import type { ColumnLayout, Layout } from "./layout.ts";
import { type FormatVotes, formatOf, PLAIN, votesOf } from "./number-format.ts";
import { type Delimiter, splitRow } from "./split-row.ts";

const FORMAT_SAMPLE = 400;

/** `numbers` are those of the lines in the file; `file` names it in messages. */
export function sniffLayout(
  lines: readonly string[],
  numbers: readonly number[],
  file: string,
): Result<Layout, RecordingReason> {
  const choice = chooseDelimiter(lines) ?? oneColumn(lines);
  if (choice === null) return noTable(file);
  const wordsOnly = choice.numeric === 0 && choice.lines > 2;
  if (wordsOnly && choice.matching < 0.6) return noTable(file);
  if (wordsOnly && choice.lines > 3) return noNumbers(file, numbers[0] ?? 1);
  const { delimiter } = choice;
  const header = findHeader(lines, delimiter, choice.count);
  const data = dataRows(lines, delimiter, header.firstRow);
  const count = columnCount(header, data, choice.count);
  const headerLine = header.nameLine === null ? null : numbers[header.nameLine]!;
  const where = { file, line: headerLine ?? numbers[header.firstRow] ?? 1 };
  if (count > MAX_COLUMNS) return tooManyColumns(count, where);
  const mismatch = headerMismatch(header, data, count, delimiter, where);
  if (mismatch !== null) return mismatch;
  const dateOrder = dateOrderOf(data);
  const votes = votesOf(data.flat());
  return success({
    delimiter,
    columns: Array.from({ length: count }, (_, c) => columnLayout(header, c, data, votes, dateOrder)),
    dateOrder,
    firstRow: header.firstRow,
    headerCells: header.names,
    headerLine,
    preamble: preambleOf(lines, header, numbers),
    shortRowsUsual: data.filter((cells) => cells.length < count).length > Math.max(2, 0.02 * data.length),
    warnings: header.unitsLeftOut === null ? [] : [unitsLeftOut(numbers[header.unitsLeftOut]!)],
  });
}

function unitsLeftOut(line: number): Warning {
  return {
    code: "units-left-out",
    text: `The row of units (line ${line}) has another number of cells than the names: its units are not used.`,
  };
}

function noTable(file: string): Failure<RecordingReason> {
  const remedy = "Give a recording as delimited text: a row of names, then rows of values.";
  return failure("no-table", "No rows of numbers were found.", remedy, { file });
}

function noNumbers(file: string, line: number): Failure<RecordingReason> {
  const remedy = "Give a recording with measured values as numbers.";
  return failure("no-numeric-column", "No column holds numbers.", remedy, { file, line });
}

function oneColumn(lines: readonly string[]): DelimiterChoice | null {
  const numbers = lines.filter((line) => isValue(kindOfCell(line, "day-first"))).length;
  return numbers >= 2 && numbers > 0.5 * lines.length
    ? { delimiter: ",", count: 1, score: 0, lines: lines.length, matching: 1, numeric: numbers / lines.length }
    : null;
}

function dataRows(lines: readonly string[], delimiter: Delimiter, firstRow: number): string[][] {
  const rows: string[][] = [];
  for (let i = firstRow; i < lines.length && rows.length < FORMAT_SAMPLE; i++) {
    const line = lines[i]!;
    if (line.trim() !== "" && !isComment(line, delimiter)) rows.push(splitRow(line, delimiter).cells);
  }
  return rows;
}

/** As many columns as there are names; a last name may be empty, if its column is filled. */
function columnCount(header: HeaderFound, data: readonly string[][], usual: number): number {
  const { names } = header;
  if (names === null) return trimmed(data) || usual;
  return Math.max(filledLength(names), Math.min(names.length, trimmed(data)));
}

/** Length of most rows without the empty cell that a trailing delimiter leaves. */
function trimmed(data: readonly string[][]): number {
  const lengths = data.map((cells) => filledLength(cells)).sort((a, b) => a - b);
  return lengths[Math.floor(0.9 * lengths.length)] ?? 0;
}

function filledLength(cells: readonly string[]): number {
  let length = cells.length;
  while (length > 1 && cells[length - 1]!.trim() === "") length--;
  return length;
}

function tooManyColumns(count: number, where: Where): Failure<RecordingReason> {
  return failure(
    "too-many-columns",
    `The table has ${count} columns; ${MAX_COLUMNS} are the most that are read.`,
    "Export fewer channels.",
    where,
  );
}

/**
 * A header with fewer or more names than most rows have cells: which name belongs to which cell can't be known, and a
 * column under its neighbour's name would be quietly wrong.
 */
function headerMismatch(
  header: HeaderFound,
  data: readonly string[][],
  count: number,
  delimiter: Delimiter,
  where: Where,
): Failure<RecordingReason> | null {
  const whole = data.slice(0, -1); // the last row at hand may be cut
  if (header.names === null || whole.length === 0) return null;
  const wide = whole.filter((cells) => filledLength(cells) > count);
  const most = whole.reduce((longest, cells) => Math.max(longest, cells.length), 0);
  const wider = wide.length >= 0.5 * whole.length;
  if (!wider && most >= count) return null;
  const cells = wider ? filledLength(wide[0]!) : most;
  const comma = wider && delimiter === "," && cells >= 1.5 * count;
  return failure(
    "ambiguous-layout",
    `The header names ${count} columns, but the rows have ${wider ? "" : "at most "}${cells} cells${comma ? ": the comma seems to be decimal mark and delimiter at once" : ""}.`,
    comma
      ? "Export with a semicolon or tab between the columns, or with a decimal point."
      : "Give the header as many names as there are columns (or export the recording again).",
    where,
  );
}

/** 24/11 can only be day first, 11/24 only month first; where no cell decides, points and Europe say day first. */
function dateOrderOf(data: readonly string[][]): DateOrder {
  for (const cells of data) {
    for (const cell of cells.slice(0, 6)) {
      const match = /^\s*"?(\d{1,2})[/.-](\d{1,2})[/.-]\d{2,4}/.exec(cell);
      if (match === null) continue;
      if (Number(match[1]) > 12) return "day-first";
      if (Number(match[2]) > 12) return "month-first";
    }
  }
  return "day-first";
}

function columnLayout(
  header: HeaderFound,
  column: number,
  data: readonly string[][],
  votes: FormatVotes,
  order: DateOrder,
): ColumnLayout {
  const { name, unit, text } = nameAndUnit(header, column);
  const cells = data.map((row) => row[column] ?? "").filter((cell) => cell.trim() !== "");
  // The last row at hand may be cut within a time.
  const whole = cells.length > 1 ? cells.slice(0, -1) : cells;
  const kinds = whole.map((cell) => kindOfCell(cell, order));
  const form = formOf(kinds);
  const format = form === "number" ? formatOf(cells, votes) : PLAIN;
  return {
    header: repairDoubleEncoding(name),
    headerText: text,
    unitText: unit === null ? (format.glued === "" ? null : format.glued) : repairDoubleEncoding(unit),
    form,
    format,
    wordy: form === "number" && kinds.filter((kind) => kind === "text").length > 0.5 * kinds.length,
  };
}

function formOf(kinds: readonly CellKind[]): ColumnForm {
  for (const form of ["clock", "date-time", "date"] as const) {
    if (kinds.length > 0 && kinds.filter((kind) => kind === form).length >= 0.8 * kinds.length) return form;
  }
  return "number";
}

function preambleOf(lines: readonly string[], header: HeaderFound, numbers: readonly number[]): TextLine[] {
  return lines
    .slice(0, header.firstRow)
    .map((text, i) => ({ line: numbers[i]!, text }))
    .filter(({ text }, i) => text.trim() !== "" && i !== header.nameLine);
}
