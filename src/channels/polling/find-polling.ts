/**
 * Which columns hold their last value between two real readings, and how often each was really read.
 * A logger that polls one channel after the other and writes a whole row each time repeats the others. The value of such a
 * channel then changes only at multiples of its polling period (in rows, not necessarily a whole number), never in
 * between; a channel read with every row changes at any row.
 */
import { QUALITY } from "../../quantities/index.ts";
import type { RawColumn } from "../../recording/index.ts";

export type Polling = {
  /** rows from one real reading to the next; null: read with every row */
  readonly period: number | null;
  /** rows at which the value changed; not listed where it was read with every row */
  readonly changes: readonly number[];
};

/** Fewer changes than this say nothing about a period. */
const FEWEST_CHANGES = 12;
/** A polled value jumps between readings; one that only ever moves by its smallest step may be slow instead of polled. */
const JUMPS = 0.1;
const ROWS_LOOKED_AT_FIRST = 2_000;

export function findPolling(columns: readonly RawColumn[]): Polling[] {
  const changes = columns.map((column) => (changesAtAnyRow(column) ? null : changesOf(column)));
  const own = columns.map((column, c) => (changes[c] == null ? null : ownPeriod(column, changes[c])));
  const periods = own.filter((period) => period !== null).sort((a, b) => a - b);
  const common = periods.length >= 2 ? periods[Math.floor(periods.length / 4)]! : null;
  return own.map((found, c) => {
    const rows = changes[c];
    if (rows == null) return { period: null, changes: [] };
    // A column that changes too seldom to tell by itself follows the others, unless its changes say no.
    const follows = common !== null && !refutes(gapsOf(rows), common) ? common : null;
    const period = found ?? follows;
    return period === null ? { period, changes: [] } : { period, changes: rows };
  });
}

/** Quick no: among the first rows the value changes in successive ones again and again. */
function changesAtAnyRow({ values, quality }: RawColumn): boolean {
  const end = Math.min(values.length, ROWS_LOOKED_AT_FIRST);
  let changes = 0;
  let successive = 0;
  let changedBefore = false;
  for (let i = 1; i < end; i++) {
    const changed = values[i] !== values[i - 1] && quality[i] === QUALITY.good && quality[i - 1] === QUALITY.good;
    if (changed) changes++;
    if (changed && changedBefore) successive++;
    changedBefore = changed;
  }
  return changes >= FEWEST_CHANGES && successive > 0.1 * changes;
}

/** Rows at which a good value differs from the last good one; the first good row counts. */
export function changesOf({ values, quality }: RawColumn): number[] {
  const rows: number[] = [];
  let last = Number.NaN;
  for (let i = 0; i < values.length; i++) {
    if (quality[i] !== QUALITY.good || values[i] === last) continue;
    last = values[i]!;
    rows.push(i);
  }
  return rows;
}

/** Rows between successive changes; the first value may have stood before the recording began. */
function gapsOf(changes: readonly number[]): number[] {
  const gaps: number[] = [];
  for (let i = 2; i < changes.length; i++) gaps.push(changes[i]! - changes[i - 1]!);
  return gaps;
}

function ownPeriod(column: RawColumn, changes: readonly number[]): number | null {
  const gaps = gapsOf(changes);
  if (gaps.length < FEWEST_CHANGES || jumpShare(column, changes) < JUMPS) return null;
  const sorted = gaps.toSorted((a, b) => a - b);
  const smallest = sorted[Math.floor(0.02 * sorted.length)]!;
  if (smallest < 2) return null;
  const singles = sorted.filter((gap) => gap < 1.6 * smallest);
  const period = singles.reduce((sum, gap) => sum + gap, 0) / singles.length;
  const near = gaps.filter((gap) => gap < 3.3 * period);
  if (singles.length < FEWEST_CHANGES / 2 || near.length < FEWEST_CHANGES / 2) return null;
  const fitting = near.filter((gap) => isMultiple(gap, period)).length;
  // Slow signals change seldom, at any row: their gaps fit multiples no better than chance, and are seldom single.
  const byChance = (Number.isInteger(period) ? 1 : 2) / period;
  const telling = byChance < 0.7 || singles.length > 0.5 * gaps.length;
  return telling && fitting >= 0.92 * near.length ? period : null;
}

/** Share of the changes that are larger than the smallest one. */
function jumpShare({ values }: RawColumn, changes: readonly number[]): number {
  const steps = changes.slice(1).map((row, i) => Math.abs(values[row]! - values[changes[i]!]!));
  const smallest = steps.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  return steps.filter((step) => step > 1.5 * smallest).length / Math.max(1, steps.length);
}

/** Whether a column changes where a column polled at this period can't. */
function refutes(gaps: readonly number[], period: number): boolean {
  const tooSoon = gaps.filter((gap) => gap < Math.floor(period)).length;
  const between = Number.isInteger(period) ? gaps.filter((gap) => gap % period !== 0).length : 0;
  return tooSoon > 0.05 * gaps.length || between > 0.1 * gaps.length;
}

function isMultiple(gap: number, period: number): boolean {
  const times = Math.max(1, Math.round(gap / period));
  return gap >= Math.floor(times * period) && gap <= Math.ceil(times * period);
}
