/**
 * Reads the rows of one delimited file as its bytes arrive: the scanner takes plain rows, the careful reader the others.
 * Where a new header stands between the rows, a new table begins. Nothing is kept but the columns and unfinished lines.
 */
import type { Failure } from "../../quantities/index.ts";
import { joined } from "../bytes.ts";
import { MAX_LINE_BYTES } from "../limits.ts";
import type { RecordingReason, TextLine } from "../recording.ts";
import { Remarks } from "../remarks.ts";
import { ColumnStore } from "./column-store.ts";
import type { Layout } from "./layout.ts";
import { behindLastLine, CR, LF, lineEnd, lineTooLong, nextLine, takeLines, textOf } from "./line.ts";
import { type LineOutcome, readLine } from "./read-line.ts";
import { scanRows } from "./scan-rows.ts";
import { sniffLayout } from "./sniff.ts";

export type Table = {
  readonly layout: Layout;
  readonly store: ColumnStore;
  /** rows that follow a repeated header: recording began anew there */
  readonly restarts: number[];
};

/** A new header is believed when this many lines behind it are at hand, or the file ends before. */
const LINES_AHEAD = 5;
const LINES_LOOKED_AT = 60;
/** Files that change their header more often than this are no recordings. */
const MOST_TABLES = 50;
/** Lines of words looked at as possible headers; a file with more has remarks between its rows. */
const MOST_LOOKS = 200;
const MOST_COMMENTS = 1_000;

export class TableReader {
  readonly tables: Table[];
  readonly remarks = new Remarks();
  readonly comments: TextLine[] = [];
  scannedRows = 0;
  private looks = 0;
  private line: number;
  private pending: Uint8Array = new Uint8Array(0);
  private readonly file: string;
  /** false: every line goes to the careful reader (to compare the two) */
  private readonly useScanner: boolean;

  constructor(layout: Layout, expectedRows: number, firstLine: number, file: string, useScanner: boolean) {
    this.tables = [newTable(layout, expectedRows)];
    this.line = firstLine;
    this.file = file;
    this.useScanner = useScanner;
  }

  push(chunk: Uint8Array): Failure<RecordingReason> | null {
    const bytes = joined(this.pending, chunk);
    const done = this.readLines(bytes, behindLastLine(bytes, 0), false);
    if (typeof done !== "number") return done;
    this.pending = bytes.slice(done);
    return this.pending.length > MAX_LINE_BYTES + LINES_AHEAD && lineEnd(this.pending, 0) < 0
      ? lineTooLong(this.file, this.line)
      : null;
  }

  finish(): Failure<RecordingReason> | null {
    const bytes = this.pending;
    this.pending = new Uint8Array(0);
    const last = bytes[bytes.length - 1];
    const end = last === CR || last === LF ? bytes.length : behindLastLine(bytes, 0);
    const done = this.readLines(bytes, end, true);
    if (typeof done !== "number") return done;
    if (done < bytes.length) this.take(this.table, textOf(bytes, done, bytes.length), true);
    return null;
  }

  private get table(): Table {
    return this.tables[this.tables.length - 1]!;
  }

  /** Takes the lines up to `end`, which stands behind a line ending; gives the place up to which they were taken. */
  private readLines(bytes: Uint8Array, end: number, final: boolean): number | Failure<RecordingReason> {
    let p = 0;
    while (p < end) {
      if (this.useScanner) p = this.scan(bytes, p, end);
      if (p >= end) break;
      const stop = lineEnd(bytes, p);
      if (stop < 0) return lineTooLong(this.file, this.line);
      if (bytes.subarray(p, stop).includes(0)) this.remarks.add("nul-bytes", this.line);
      const outcome = this.take(this.table, textOf(bytes, p, stop), false);
      if (outcome !== "words-only") {
        p = nextLine(bytes, stop);
        continue;
      }
      const next = this.newTableAt(bytes, p, end, final);
      if (next === null) return p;
      p = next;
    }
    return p;
  }

  private scan(bytes: Uint8Array, start: number, end: number): number {
    const before = this.table.store.rows;
    const state = { line: this.line };
    const p = scanRows(bytes, start, end, this.table.layout, this.table.store, state);
    this.line = state.line;
    this.scannedRows += this.table.store.rows - before;
    return p;
  }

  private take(table: Table, text: string, last: boolean): LineOutcome {
    const outcome = readLine(text, table.layout, table.store, this.line, last);
    if (outcome === "words-only") return outcome;
    if (outcome === "comment") this.keep(text);
    if (outcome === "header-again" && table.store.rows > 0) table.restarts.push(table.store.rows);
    if (outcome !== "row" && outcome !== "blank" && outcome !== "comment") this.remarks.add(outcome, this.line);
    this.line++;
    return outcome;
  }

  private keep(text: string): void {
    if (this.comments.length < MOST_COMMENTS) this.comments.push({ line: this.line, text });
  }

  /** A line of words between rows: a new header if rows of its own follow. Null: too few lines are at hand to tell. */
  private newTableAt(bytes: Uint8Array, start: number, end: number, final: boolean): number | null {
    this.looks++;
    if (this.looks > MOST_LOOKS) return this.passBy(bytes, start);
    const lines = takeLines(bytes.subarray(0, end), start, LINES_LOOKED_AT, 100_000, true);
    if (lines.text.length < LINES_AHEAD && !final) return null;
    const layout = sniffLayout(
      lines.text,
      lines.numbers.map((i) => i + this.line),
      this.file,
    );
    const isHeader =
      layout.ok &&
      isNamed(layout.value) &&
      layout.value.headerLine === this.line &&
      layout.value.firstRow < lines.text.length;
    if (isHeader && this.tables.length < MOST_TABLES) {
      this.tables.push(newTable(layout.value, 64));
      this.line += lines.numbers[layout.value.firstRow]!;
      return lines.starts[layout.value.firstRow]!;
    }
    return this.passBy(bytes, start);
  }

  private passBy(bytes: Uint8Array, start: number): number {
    const end = lineEnd(bytes, start);
    const stop = end < 0 ? bytes.length : end;
    this.remarks.add("no-values", this.line);
    this.keep(textOf(bytes, start, stop));
    this.line++;
    return nextLine(bytes, stop);
  }
}

/** A header names most of its columns; "Event;door opened;;;;" is a remark. */
function isNamed(layout: Layout): boolean {
  const named = layout.columns.filter((column) => column.headerText !== "").length;
  return named >= 2 && named >= 0.6 * layout.columns.length;
}

function newTable(layout: Layout, expectedRows: number): Table {
  return { layout, store: new ColumnStore(layout.columns.length, expectedRows), restarts: [] };
}
