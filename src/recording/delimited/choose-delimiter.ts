/**
 * Which character parts the cells: the one under which most lines have the same number of cells and most cells of those
 * lines are numbers or times. A comma that is really a decimal mark leaves cells such as "5;12", which are neither.
 */

import { type CellKind, kindOfCell } from "./cell-kind.ts";
import { isComment } from "./comment.ts";
import { type Delimiter, splitRow } from "./split-row.ts";

export type DelimiterChoice = {
  readonly delimiter: Delimiter;
  /** usual number of cells of a line */
  readonly count: number;
  readonly score: number;
  /** lines looked at, and the share of them that has the usual number of cells */
  readonly lines: number;
  readonly matching: number;
  /** share of the cells that are numbers, times or marks of absence */
  readonly numeric: number;
};

const CANDIDATES: readonly Delimiter[] = ["\t", ";", "|", ",", " "];
/** lines at either end of the head that are looked at: enough, however long the lines above the table go on */
const ENDS = 120;
const MAX_CELLS_LOOKED_AT = 4_000;
const MAX_CELLS_OF_A_ROW = 200;

export function chooseDelimiter(all: readonly string[]): DelimiterChoice | null {
  const lines = all.length <= 2 * ENDS ? all : [...all.slice(0, ENDS), ...all.slice(-ENDS)];
  let best: DelimiterChoice | null = null;
  for (const delimiter of CANDIDATES) {
    const choice = judge(lines, delimiter);
    // The order of the candidates settles ties: a space also parts cells that end in a comma or a tab.
    if (choice !== null && (best === null || choice.score > best.score * 1.001)) best = choice;
  }
  return best;
}

function judge(lines: readonly string[], delimiter: Delimiter): DelimiterChoice | null {
  const rows: string[][] = [];
  const counts = new Map<number, number>();
  for (const line of lines) {
    if (line.trim() === "" || isComment(line, delimiter)) continue;
    const { cells } = splitRow(line, delimiter);
    rows.push(cells);
    counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  }
  const [count, matching] = [...counts].filter(([n]) => n > 1).sort((a, b) => b[1] - a[1] || b[0] - a[0])[0] ?? [0, 0];
  if (count === 0) return null;
  const share = numericShare(rows.filter((cells) => cells.length === count));
  const even = matching / rows.length;
  return { delimiter, count, score: even * (0.02 + share), lines: rows.length, matching: even, numeric: share };
}

function numericShare(rows: readonly string[][]): number {
  let filled = 0;
  let numeric = 0;
  for (const cells of rows) {
    for (const cell of cells.slice(0, MAX_CELLS_OF_A_ROW)) {
      const kind = kindOfCell(cell, "day-first");
      if (kind === "empty") continue;
      filled++;
      if (isValue(kind)) numeric++;
    }
    if (filled > MAX_CELLS_LOOKED_AT) break;
  }
  return filled === 0 ? 0 : numeric / filled;
}

export function isValue(kind: CellKind): boolean {
  return kind !== "empty" && kind !== "text";
}
