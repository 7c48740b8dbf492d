/**
 * Long format (time, channel, value): one reading a row, the channel named in a cell. Turned into one column a channel,
 * one row for each time stamp, with missing cells where a channel was not read.
 */
import { QUALITY } from "../quantities/index.ts";
import { partsOfHeader } from "./delimited/unit-text.ts";
import type { RawTable } from "./raw-table.ts";
import type { RawColumn } from "./recording.ts";
import { findTimeSource } from "./time/find-time.ts";

const NAME_HEADER =
  /chan|signal|name|pid|param|kanal|kennung|messgr|bezeichnung|canal|voie|grandeur|variable|magnitud|grandeza|sensor|senal|quantity|item|key|label|measure|metric|tag/i;
const VALUE_HEADER = /val|wert|messwert|lectura|reading|data|mesure|medid|dato|number|zahl/i;
const UNIT_HEADER = /unit|einheit|unite|unité|unidad|unidade|uom/i;
const MOST_COLUMNS = 7;
const MOST_CHANNELS = 2_000;

export function fromLongFormat(table: RawTable): RawTable | null {
  const found = findLongColumns(table);
  return found === null ? null : pivot(table, found);
}

type LongColumns = {
  readonly time: readonly RawColumn[];
  readonly name: RawColumn;
  readonly value: RawColumn;
  readonly unit: RawColumn | null;
};

function findLongColumns(table: RawTable): LongColumns | null {
  if (table.columns.length < 3 || table.columns.length > MOST_COLUMNS || table.rows < 4) return null;
  const source = findTimeSource(table.columns);
  if (source === null || source.kind === "sample-number") return null;
  const time = source.kind !== "number" && source.date !== null ? [source.date, source.column] : [source.column];
  const rest = table.columns.filter((column) => !time.includes(column));
  const worded = rest.filter((column) => wordShare(column, table.rows) > 0.9);
  const unit = worded.find((column) => UNIT_HEADER.test(column.headerText)) ?? null;
  const names = worded.filter((column) => column !== unit && isNameColumn(column, table.rows));
  const name = names.find((column) => NAME_HEADER.test(column.headerText)) ?? names[0];
  const numeric = rest.filter((column) => column !== name && column !== unit && numberShare(column) > 0.5);
  const value =
    numeric.find((column) => VALUE_HEADER.test(column.headerText)) ?? (numeric.length === 1 ? numeric[0] : undefined);
  if (name === undefined || value === undefined) return null;
  const named = NAME_HEADER.test(name.headerText) || VALUE_HEADER.test(value.headerText);
  return named && (numeric.length === 1 || VALUE_HEADER.test(value.headerText)) ? { time, name, value, unit } : null;
}

function wordShare(column: RawColumn, rows: number): number {
  return (column.texts?.rows.length ?? 0) / rows;
}

function numberShare(column: RawColumn): number {
  let good = 0;
  for (const code of column.quality) if (code === QUALITY.good) good++;
  return good / Math.max(1, column.quality.length);
}

/** Names of channels: several, each coming again and again. */
function isNameColumn(column: RawColumn, rows: number): boolean {
  const words = column.texts?.dictionary.length ?? 0;
  return words >= 2 && words <= MOST_CHANNELS && rows >= 2 * words;
}

function pivot(table: RawTable, { time, name, value, unit }: LongColumns): RawTable {
  const nameOf = wordIndices(name, table.rows);
  const unitOf = unit === null ? null : wordIndices(unit, table.rows);
  const channels = name.texts!.dictionary;
  const rowOf = new Uint32Array(table.rows);
  const firstRows: number[] = [];
  let seen = new Set<number>();
  for (let i = 0; i < table.rows; i++) {
    // A new row begins with a new stamp, or where a channel comes twice under the same stamp.
    const sameStamp = i > 0 && time.every((column) => column.values[i] === column.values[i - 1]);
    if (!sameStamp || seen.has(nameOf[i]!)) {
      firstRows.push(i);
      seen = new Set();
    }
    seen.add(nameOf[i]!);
    rowOf[i] = firstRows.length - 1;
  }
  const rows = firstRows.length;
  const columns = channels.map((channel, c) => emptyColumn(channel, time.length + c + 1, rows));
  for (let i = 0; i < table.rows; i++) {
    const column = columns[nameOf[i]!];
    if (column === undefined) continue;
    column.values[rowOf[i]!] = value.values[i]!;
    column.quality[rowOf[i]!] = value.quality[i]!;
    if (unitOf !== null && column.unitText === null) column.unitText = unit!.texts!.dictionary[unitOf[i]!] ?? null;
  }
  const stamps = time.map((column, k) => picked(column, firstRows, k + 1));
  return {
    columns: [...stamps, ...columns],
    rows,
    lines: Uint32Array.from(firstRows, (i) => table.lines[i]!),
    restarts: table.restarts.map((row) => rowOf[row] ?? rows),
  };
}

type Growing = { -readonly [key in keyof RawColumn]: RawColumn[key] };

function emptyColumn(channel: string, position: number, rows: number): Growing {
  const { name, unit } = partsOfHeader(channel);
  return {
    position,
    header: name,
    headerText: channel,
    unitText: unit,
    form: "number",
    values: new Float64Array(rows).fill(Number.NaN),
    quality: new Uint8Array(rows).fill(QUALITY.missing),
    texts: null,
  };
}

/** The index of the word in each row; the number of words where there is none. */
function wordIndices(column: RawColumn, rows: number): Uint32Array {
  const texts = column.texts!;
  const indices = new Uint32Array(rows).fill(texts.dictionary.length);
  for (let i = 0; i < texts.rows.length; i++) indices[texts.rows[i]!] = texts.words[i]!;
  return indices;
}

function picked(column: RawColumn, rows: readonly number[], position: number): RawColumn {
  return {
    ...column,
    position,
    values: Float64Array.from(rows, (row) => column.values[row]!),
    quality: Uint8Array.from(rows, (row) => column.quality[row]!),
    texts: null,
  };
}
