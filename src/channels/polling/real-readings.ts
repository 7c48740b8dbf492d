/** Rows at which a polled channel was really read: where its value changed, and, between changes, on schedule. */
import { QUALITY } from "../../quantities/index.ts";
import type { RawColumn } from "../../recording/index.ts";

export function realReadings(column: RawColumn, changes: readonly number[], period: number): Uint32Array {
  const rows: number[] = [];
  const end = lastGoodRow(column) + 1;
  for (let i = 0; i < changes.length; i++) {
    const from = changes[i]!;
    const next = changes[i + 1];
    // What stands in the very first row may have been read before it: the schedule is counted back from the first change.
    if (i === 0 && from === 0 && next !== undefined) rows.push(...countedBack(column, next, period));
    else rows.push(from, ...unchanged(column, from, next ?? null, end, period));
  }
  return Uint32Array.from(rows);
}

/** Equal readings leave no trace: they are put where the schedule says, evenly between the two changes around them. */
function unchanged(column: RawColumn, from: number, next: number | null, end: number, period: number): number[] {
  const span = (next ?? end) - from;
  const steps = next === null ? Math.ceil(span / period) : Math.max(1, Math.round(span / period));
  const stride = next === null ? period : span / steps;
  const rows = Array.from({ length: Math.max(0, steps - 1) }, (_, k) => from + Math.round((k + 1) * stride));
  return rows.filter((row) => row < end && column.quality[row] === QUALITY.good);
}

function countedBack(column: RawColumn, firstChange: number, period: number): number[] {
  const steps = Math.floor(firstChange / period + 1e-9);
  const rows = Array.from({ length: steps }, (_, k) => Math.round(firstChange - (steps - k) * period));
  return rows.filter((row) => row >= 0 && column.quality[row] === QUALITY.good);
}

function lastGoodRow(column: RawColumn): number {
  let row = column.quality.length - 1;
  while (row >= 0 && column.quality[row] !== QUALITY.good) row--;
  return row;
}

/** Rows that hold a value; null where all do. */
export function filledRows(column: RawColumn): Uint32Array | null {
  const { quality } = column;
  let count = 0;
  for (let i = 0; i < quality.length; i++) if (quality[i] === QUALITY.good) count++;
  if (count === quality.length) return null;
  const rows = new Uint32Array(count);
  let kept = 0;
  for (let i = 0; i < quality.length; i++) if (quality[i] === QUALITY.good) rows[kept++] = i;
  return rows;
}
