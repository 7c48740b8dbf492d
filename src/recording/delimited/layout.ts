/** What the sniffer found out about a table before its rows are read. */
import type { Warning } from "../../quantities/index.ts";
import type { ColumnForm, TextLine } from "../recording.ts";
import type { DateOrder } from "../time/parse-time.ts";
import type { NumberFormat } from "./number-format.ts";
import type { Delimiter } from "./split-row.ts";

export type ColumnLayout = {
  readonly header: string;
  readonly headerText: string;
  readonly unitText: string | null;
  readonly form: ColumnForm;
  readonly format: NumberFormat;
  /** most cells are words: states, names */
  readonly wordy: boolean;
};

export type Layout = {
  readonly delimiter: Delimiter;
  readonly columns: readonly ColumnLayout[];
  readonly dateOrder: DateOrder;
  /** index, within the sniffed lines, of the first row of data */
  readonly firstRow: number;
  /** the cells of the header as written, to know it again where it is repeated; null where there is none */
  readonly headerCells: readonly string[] | null;
  readonly headerLine: number | null;
  readonly preamble: readonly TextLine[];
  /** whether rows with fewer cells are the habit of this file (columns fill up from the left) */
  readonly shortRowsUsual: boolean;
  readonly warnings: readonly Warning[];
};
