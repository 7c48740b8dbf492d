/** A recording as it was logged: names, units and values exactly as in the file; nothing recognised, nothing converted. */
import type { Warning } from "../quantities/index.ts";

/** Cells that hold words ("ON", "n/a"): row numbers, and for each the index of its word. */
export type TextCells = {
  readonly rows: Uint32Array;
  readonly words: Uint32Array;
  readonly dictionary: readonly string[];
};

/** How the numbers of a column were written. Clock times are s since midnight, dates and date-times s since 1970-01-01. */
export type ColumnForm = "number" | "clock" | "date-time" | "date";

export type RawColumn = {
  /** 1 for the first column of the file */
  readonly position: number;
  /** the name without its unit */
  readonly header: string;
  /** the header cell(s) as written */
  readonly headerText: string;
  readonly unitText: string | null;
  readonly form: ColumnForm;
  /** NaN only together with a quality code other than good */
  readonly values: Float64Array;
  /** codes of QUALITY */
  readonly quality: Uint8Array;
  readonly texts: TextCells | null;
};

export type TimeKind = "number" | "clock" | "date-time" | "sample-number" | "stated-rate";

export type TimeBase = {
  readonly kind: TimeKind;
  /** s since the first row, never falling, one for each row */
  readonly seconds: Float64Array;
  /** positions of the columns it was made from */
  readonly columns: readonly number[];
  /** s, how coarse the stamps are (half of it is the error of one stamp) */
  readonly resolution: number;
  /** s, median time from row to row */
  readonly interval: number;
  /** in words: "clock time in column 1, a row every 0.09 s" */
  readonly how: string;
};

/** Rows of one unbroken passage of time; `endRow` is the row after the last. */
export type RowStretch = { readonly startRow: number; readonly endRow: number; readonly why: string | null };

export type TextLine = { readonly line: number; readonly text: string };

export type Recording = {
  readonly name: string;
  readonly rows: number;
  readonly columns: readonly RawColumn[];
  /** null: the file has no time column and no rate was stated */
  readonly time: TimeBase | null;
  readonly stretches: readonly RowStretch[];
  /** number of the line each row stands on, from 1 */
  readonly lines: Uint32Array;
  readonly encoding: string;
  readonly delimiter: string;
  readonly decimalMark: "." | ",";
  /** lines before the header, and comment lines anywhere, as text */
  readonly preamble: readonly TextLine[];
  readonly headerLine: number | null;
  /** share of the rows that the numeric scanner took */
  readonly fastShare: number;
  readonly warnings: readonly Warning[];
};

export type RecordingReason =
  | "empty-file"
  | "binary-file"
  | "foreign-format"
  | "compressed"
  | "too-large"
  | "line-too-long"
  | "too-many-columns"
  | "no-table"
  | "no-rows"
  | "no-numeric-column"
  | "ambiguous-layout"
  | "bad-rate";

export type ReadOptions = {
  readonly name: string;
  /** Hz, rows a second as stated by the user; overrides what the file says */
  readonly rate?: number;
};
