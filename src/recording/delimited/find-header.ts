/** Which lines of the head are preamble, group names, names, units, and where the rows of data begin. */

import { type CellKind, kindOfCell } from "./cell-kind.ts";
import { isValue } from "./choose-delimiter.ts";
import { isComment } from "./comment.ts";
import { type Delimiter, splitRow } from "./split-row.ts";
import { looksLikeUnit, partsOfHeader } from "./unit-text.ts";

export type HeaderFound = {
  /** cells of the row of names, null where the table begins with numbers */
  readonly names: readonly string[] | null;
  readonly nameLine: number | null;
  readonly groups: readonly string[] | null;
  readonly units: readonly string[] | null;
  /** a row of units that does not fit the names */
  readonly unitsLeftOut: number | null;
  readonly firstRow: number;
};

type Row = { readonly cells: string[]; readonly comment: boolean; readonly kinds: CellKind[] };

/** `count` is the usual number of cells of a row. */
export function findHeader(lines: readonly string[], delimiter: Delimiter, count: number): HeaderFound {
  const known: Row[] = [];
  const rowAt = (i: number): Row => {
    known[i] ??= toRow(lines[i]!, delimiter);
    return known[i];
  };
  const wide = Math.max(count > 1 ? 2 : 1, Math.ceil(count * 0.5));
  let full = 0;
  while (full < lines.length && !isFullRow(rowAt(full), count)) full++;
  // Rows above the first full one that are data too (a logger that fills its columns one by one) belong to the table.
  let first = full;
  while (first > 0 && isFullRow(rowAt(first - 1), 2)) first--;
  const above: number[] = [];
  for (let i = first - 1; i >= 0 && above.length < 4; i--) {
    const row = rowAt(i);
    if (isRuler(row)) continue;
    if (row.comment || row.kinds.every((kind) => kind === "empty")) {
      // A blank line ends the header, unless only units were met below it.
      if (above.some((k) => !isUnitRow(rowAt(k)))) break;
      continue;
    }
    if (row.cells.length < wide || isData(row)) break;
    above.unshift(i);
  }
  if (above.length === 0) return commentedHeader(rowAt, lines, delimiter, count, first);
  const unitRow = above.length > 1 ? above.findLast((i) => isUnitRow(rowAt(i))) : undefined;
  const nameRow =
    nameRowOf(
      above.filter((i) => unitRow === undefined || i < unitRow),
      rowAt,
    ) ?? above.at(-1)!;
  const groupRow = above.slice(0, above.indexOf(nameRow)).findLast((i) => isGroupRow(rowAt(i), count));
  return {
    names: rowAt(nameRow).cells,
    nameLine: nameRow,
    groups: groupRow === undefined ? null : filledForward(rowAt(groupRow).cells),
    ...unitsOf(rowAt, unitRow, nameRow),
    firstRow: first,
  };
}

/** The last row that names nearly as many columns as any: a remark below the names fills a cell or two. */
function nameRowOf(candidates: readonly number[], rowAt: (i: number) => Row): number | undefined {
  const filled = (i: number) => rowAt(i).cells.filter((cell) => cell.trim() !== "").length;
  const most = Math.max(0, ...candidates.map(filled));
  return candidates.findLast((i) => filled(i) >= 0.8 * most);
}

/** Group names stand over the whole width; a padded remark fills its first cells only. */
function isGroupRow(row: Row, count: number): boolean {
  return row.cells.length >= count && row.cells.slice(2).some((cell) => cell.trim() !== "");
}

/** A row of units of another length than the names would put units under their neighbours. */
function unitsOf(
  rowAt: (i: number) => Row,
  unitRow: number | undefined,
  nameRow: number,
): Pick<HeaderFound, "units" | "unitsLeftOut"> {
  if (unitRow === undefined || unitRow < nameRow) return { units: null, unitsLeftOut: null };
  const fits = sameLength(rowAt(unitRow), rowAt(nameRow));
  return { units: fits ? rowAt(unitRow).cells : null, unitsLeftOut: fits ? null : unitRow };
}

function sameLength(a: Row, b: Row): boolean {
  return Math.abs(a.cells.length - b.cells.length) <= (a.cells.at(-1) === "" || b.cells.at(-1) === "" ? 1 : 0);
}

/** "# time,rpm,kPa": a header behind a comment mark counts where no other stands. */
function commentedHeader(
  rowAt: (i: number) => Row,
  lines: readonly string[],
  delimiter: Delimiter,
  count: number,
  first: number,
): HeaderFound {
  for (let i = first - 1; i >= 0; i--) {
    if (!rowAt(i).comment) continue;
    const { cells } = splitRow(lines[i]!.trimStart().replace(/^(#+|%+|\/\/|;)\s*/, ""), delimiter);
    const text = cells.filter((cell) => kindOfCell(cell, "day-first") === "text").length;
    if (cells.length === count && text > 0.6 * count) {
      return { names: cells, nameLine: i, groups: null, units: null, unitsLeftOut: null, firstRow: first };
    }
  }
  return { names: null, nameLine: null, groups: null, units: null, unitsLeftOut: null, firstRow: first };
}

function toRow(line: string, delimiter: Delimiter): Row {
  const { cells } = splitRow(line, delimiter);
  return { cells, comment: isComment(line, delimiter), kinds: cells.map((cell) => kindOfCell(cell, "day-first")) };
}

/** "|-----|-----|" under a header. */
function isRuler(row: Row): boolean {
  const filled = row.cells.filter((cell) => cell.trim() !== "");
  return filled.length > 0 && filled.every((cell) => /^\s*[-=+:_]{3,}\s*$/.test(cell));
}

function isFullRow(row: Row, count: number): boolean {
  return !row.comment && row.cells.length >= count && isData(row);
}

function isData(row: Row): boolean {
  const filled = row.kinds.filter((kind) => kind !== "empty").length;
  // "Displacement;1998;;;;;": a remark that a spreadsheet padded to the width of the table.
  const label = row.kinds.find((kind) => kind !== "empty") === "text";
  if (label && row.kinds.length > 3 && filled < 0.5 * row.kinds.length) return false;
  const values = row.kinds.filter(isValue).length;
  const numbers = row.kinds.filter((kind) => isValue(kind) && kind !== "missing").length;
  return numbers > 0 && values >= 0.4 * filled;
}

function isUnitRow(row: Row): boolean {
  const filled = row.cells.filter((cell) => cell.trim() !== "");
  const units = filled.filter(
    (cell) => looksLikeUnit(bare(cell)) || /^\s*[[(].*[\])]\s*$/.test(cell) || bare(cell) === "-",
  );
  return filled.length > 0 && units.length >= 0.6 * filled.length;
}

/** "[kPa]" and "(kPa)" without their brackets. */
export function bare(cell: string): string {
  return cell.trim().replace(/^[[(<{]\s*(.*?)\s*[\])>}]$/, "$1");
}

function filledForward(cells: readonly string[]): string[] {
  let last = "";
  return cells.map((cell) => {
    if (cell.trim() !== "") last = cell.trim();
    return last;
  });
}

/** Name and unit of one column from its group name, name and unit row. */
export function nameAndUnit(found: HeaderFound, column: number): { name: string; unit: string | null; text: string } {
  const written = found.names?.[column]?.trim() ?? "";
  const parts = partsOfHeader(written);
  const unitCell = bare(found.units?.[column] ?? "");
  const group = found.groups?.[column] ?? "";
  const name = group === "" || group === parts.name ? parts.name : `${group} ${parts.name}`;
  return { name, unit: unitCell !== "" && unitCell !== "-" ? unitCell : parts.unit, text: written };
}
