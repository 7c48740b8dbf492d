/**
 * Several tables of one file as one: a column of the same name and unit goes on, a new one begins with missing cells
 * above. Tables of different channels over the same time (one fast, one slow) are merged by time; others follow each
 * other, and the recording is split between them. A table without time beside one with time is no recording: left out.
 */
import { QUALITY, type Warning } from "../quantities/index.ts";
import type { RawTable } from "./raw-table.ts";
import type { RawColumn, TextCells } from "./recording.ts";
import { findTimeSource } from "./time/find-time.ts";

export type Combined = { readonly table: RawTable; readonly warnings: readonly Warning[] };

export function combineTables(tables: readonly RawTable[]): Combined {
  const filled = tables.filter((table) => table.rows > 0);
  const [first] = filled;
  if (first === undefined || filled.length === 1) return { table: first ?? tables[0]!, warnings: [] };
  const timed = filled.filter((table) => timeColumn(table) !== null);
  const kept = timed.length > 0 ? timed : [filled.reduce((a, b) => (b.rows > a.rows ? b : a))];
  const warnings = filled.filter((table) => !kept.includes(table)).map(leftOutWarning);
  if (kept.length === 1) return { table: kept[0]!, warnings };
  const parallel = kept.every((table, i) => i === 0 || runsBeside(kept[0]!, table));
  const order = parallel ? rowsByTime(kept) : rowsInSequence(kept);
  const columns = unionOf(kept).map((sources, i) => stitched(sources, kept, order, i + 1));
  const text = `${kept.length} tables in one file, ${parallel ? "merged by their time" : "one after the other"} (the second begins at line ${kept[1]!.lines[0]}).`;
  return {
    table: {
      columns,
      rows: order.table.length,
      lines: order.table.reduce((lines, t, row) => {
        lines[row] = kept[t]!.lines[order.row[row]!]!;
        return lines;
      }, new Uint32Array(order.table.length)),
      restarts: parallel ? [] : restartsOf(kept),
    },
    warnings: [...warnings, { code: "several-tables", text }],
  };
}

/** Which table and row each row of the whole comes from. */
type Order = { readonly table: Uint8Array; readonly row: Uint32Array };

function leftOutWarning(table: RawTable): Warning {
  const names = table.columns.slice(0, 3).map((column) => column.headerText);
  return {
    code: "table-left-out",
    text: `A second table of ${table.rows} rows (${names.join(", ")}${table.columns.length > 3 ? ", ..." : ""}; line ${table.lines[0]}) has no time and is left out.`,
  };
}

function timeColumn(table: RawTable): RawColumn | null {
  const source = findTimeSource(table.columns);
  return source === null || source.kind === "sample-number" ? null : source.column;
}

const keyOf = (column: RawColumn) => `${column.headerText.trim().toLowerCase()}\u0000${column.unitText ?? ""}`;

/** Two tables run beside each other if they share nothing but their time, and that overlaps. */
function runsBeside(a: RawTable, b: RawTable): boolean {
  const timeA = timeColumn(a)!;
  const timeB = timeColumn(b)!;
  const keys = new Set(a.columns.filter((column) => column !== timeA).map(keyOf));
  if (b.columns.some((column) => column !== timeB && keys.has(keyOf(column)))) return false;
  const [firstA, lastA] = endsOf(timeA);
  const [firstB, lastB] = endsOf(timeB);
  return keyOf(timeA) === keyOf(timeB) && firstB < lastA && firstA < lastB;
}

function endsOf(column: RawColumn): [number, number] {
  const known = column.values.filter((value) => !Number.isNaN(value));
  return [known[0] ?? 0, known.at(-1) ?? 0];
}

function rowsInSequence(tables: readonly RawTable[]): Order {
  const total = tables.reduce((sum, table) => sum + table.rows, 0);
  const order = { table: new Uint8Array(total), row: new Uint32Array(total) };
  let at = 0;
  for (const [t, table] of tables.entries()) {
    for (let row = 0; row < table.rows; row++, at++) {
      order.table[at] = t;
      order.row[at] = row;
    }
  }
  return order;
}

function rowsByTime(tables: readonly RawTable[]): Order {
  const times = tables.map((table) => timeColumn(table)!.values);
  const sequence = rowsInSequence(tables);
  const stamp = (i: number) => times[sequence.table[i]!]![sequence.row[i]!]!;
  const sorted = Uint32Array.from(sequence.table, (_, i) => i).sort((a, b) => stamp(a) - stamp(b) || a - b);
  return {
    table: Uint8Array.from(sorted, (i) => sequence.table[i]!),
    row: Uint32Array.from(sorted, (i) => sequence.row[i]!),
  };
}

function restartsOf(tables: readonly RawTable[]): number[] {
  const restarts: number[] = [];
  let offset = 0;
  for (const table of tables) {
    if (offset > 0) restarts.push(offset);
    restarts.push(...table.restarts.map((row) => row + offset));
    offset += table.rows;
  }
  return restarts;
}

/** For each column of the whole, its column in each table (or undefined). */
function unionOf(tables: readonly RawTable[]): (RawColumn | undefined)[][] {
  const union = new Map<string, (RawColumn | undefined)[]>();
  for (const [t, table] of tables.entries()) {
    const seen = new Map<string, number>();
    for (const column of table.columns) {
      const times = seen.get(keyOf(column)) ?? 0;
      seen.set(keyOf(column), times + 1);
      const key = `${keyOf(column)}\u0000${times}`;
      const sources = union.get(key) ?? new Array<RawColumn | undefined>(tables.length).fill(undefined);
      sources[t] = column;
      union.set(key, sources);
    }
  }
  return [...union.values()];
}

function stitched(
  sources: readonly (RawColumn | undefined)[],
  tables: readonly RawTable[],
  order: Order,
  position: number,
): RawColumn {
  const rows = order.table.length;
  const model = sources.find((column) => column !== undefined)!;
  const values = new Float64Array(rows);
  const quality = new Uint8Array(rows);
  for (let i = 0; i < rows; i++) {
    const column = sources[order.table[i]!];
    values[i] = column === undefined ? Number.NaN : column.values[order.row[i]!]!;
    quality[i] = column === undefined ? QUALITY.missing : column.quality[order.row[i]!]!;
  }
  return { ...model, position, values, quality, texts: stitchedTexts(sources, tables, order) };
}

function stitchedTexts(
  sources: readonly (RawColumn | undefined)[],
  tables: readonly RawTable[],
  order: Order,
): TextCells | null {
  if (sources.every((column) => column === undefined || column.texts === null)) return null;
  const words = sources.map((column, t) => {
    const byRow = new Map<number, string>();
    column?.texts?.rows.forEach((row, i) => {
      byRow.set(row, column.texts!.dictionary[column.texts!.words[i]!]!);
    });
    return tables[t]!.rows > 0 ? byRow : new Map<number, string>();
  });
  const dictionary = new Map<string, number>();
  const rows: number[] = [];
  const indices: number[] = [];
  for (let i = 0; i < order.table.length; i++) {
    const word = words[order.table[i]!]!.get(order.row[i]!);
    if (word === undefined) continue;
    if (!dictionary.has(word)) dictionary.set(word, dictionary.size);
    rows.push(i);
    indices.push(dictionary.get(word)!);
  }
  return { rows: Uint32Array.from(rows), words: Uint32Array.from(indices), dictionary: [...dictionary.keys()] };
}
