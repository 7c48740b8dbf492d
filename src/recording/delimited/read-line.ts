/** The careful half of the two readers: one line of text into one row, whatever stands in it, with a reason for what does not fit. */
import { parseCell } from "./cell.ts";
import type { ColumnStore } from "./column-store.ts";
import { isComment } from "./comment.ts";
import type { Layout } from "./layout.ts";
import { PLAIN } from "./number-format.ts";
import { splitRow } from "./split-row.ts";
import { writeCell } from "./write-cell.ts";

export type LineOutcome =
  | "row"
  | "blank"
  | "comment"
  | "header-again"
  /** cells kept up to the end of the line, which the file's end may have cut */
  | "cut"
  /** columns beyond the line's last cell are missing, as usual in this file */
  | "short-row"
  /** left out: which cell is missing can't be known */
  | "too-short"
  | "too-long"
  | "unbalanced-quote"
  | "no-values"
  /** no number and no time in it: not taken, perhaps a header of another table */
  | "words-only";

export function readLine(text: string, layout: Layout, store: ColumnStore, line: number, last: boolean): LineOutcome {
  if (text.trim() === "") return "blank";
  if (isComment(text, layout.delimiter)) return "comment";
  const { cells, unbalanced } = splitRow(text, layout.delimiter);
  const count = layout.columns.length;
  const filled = filledLength(cells);
  if (isHeaderAgain(cells, layout)) return "header-again";
  if (!last && filled >= 2 && cells.every((cell) => isWordOrEmpty(cell))) return "words-only";
  if (filled > count) return "too-long";
  if (unbalanced && !last) return "unbalanced-quote";
  const short = cells.length < count;
  // The last line of a file that ends within a row: its last cell may be cut as well, so it is not taken.
  const usable = short && last ? cells.length - 1 : Math.min(cells.length, count);
  if (short && (isWordAmongNumbers(cells[0]!, layout) || !(last || layout.shortRowsUsual))) return "too-short";
  store.ensureRow();
  const row = store.rows;
  let values = 0;
  for (let c = 0; c < count; c++) {
    if (c < usable) values += writeCell(cells[c]!, layout.columns[c]!, layout, store, c, row) ? 1 : 0;
    else store.setMissing(c, row);
  }
  if (values === 0) {
    store.clearRow();
    return "no-values";
  }
  store.lines[row] = line;
  store.rows = row + 1;
  return short ? (last ? "cut" : "short-row") : "row";
}

/** A digit, a sign or a mark of "no value" at its beginning makes a cell a value. */
function isWordOrEmpty(cell: string): boolean {
  const text = cell.trim();
  return text === "" || !(/^[+\-\u2212.,]?\d/.test(text) || parseCell(text, PLAIN).kind === "missing");
}

/** A short line that begins with a name where numbers stood belongs to a summary below, not to the table. */
function isWordAmongNumbers(cell: string, layout: Layout): boolean {
  const first = layout.columns[0]!;
  return !first.wordy && first.form === "number" && cell.trim() !== "" && isWordOrEmpty(cell);
}

function filledLength(cells: readonly string[]): number {
  let length = cells.length;
  while (length > 0 && cells[length - 1]!.trim() === "") length--;
  return length;
}

function isHeaderAgain(cells: readonly string[], layout: Layout): boolean {
  const header = layout.headerCells;
  if (header === null || cells.length < 2) return false;
  const same = header.filter((name, i) => name.trim() === (cells[i] ?? "").trim()).length;
  return same >= 0.8 * header.length && cells.some((cell) => cell.trim() !== "");
}
