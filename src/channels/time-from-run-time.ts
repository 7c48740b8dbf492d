/**
 * A time base for a recording without a time column, from the engine's own run time: whole seconds, polled like any
 * channel, restarting with the engine. Rows are taken as evenly spaced between two readings of it; before the first
 * count (engine off) and after the last, at the rate of the rest.
 */
import { QUALITY } from "../quantities/index.ts";
import type { RawColumn, RowStretch, TimeBase } from "../recording/index.ts";
import { changesOf } from "./polling/find-polling.ts";

export type RunTimeBase = { readonly base: TimeBase; readonly stretches: readonly RowStretch[] };

/** Counts on either side over which the local rate of rows is taken: long enough to even out the whole seconds. */
const WINDOW = 12;

/** `factor` is s for one count. Null where the column hardly moves. */
export function timeFromRunTime(column: RawColumn, factor: number): RunTimeBase | null {
  const rows = column.values.length;
  const passages = split(column);
  const rates = passages.map((passage) => rateOf(column, passage, factor)).filter((rate) => rate > 0);
  if (rates.length === 0) return null;
  const usual = rates.sort((a, b) => a - b)[rates.length >> 1]!;
  const seconds = new Float64Array(rows);
  let offset = 0;
  for (const passage of passages) offset = fill(seconds, column, passage, factor, usual, offset);
  const base: TimeBase = {
    kind: "number",
    seconds,
    columns: [column.position],
    resolution: factor,
    interval: usual,
    how: `no time column; built from the engine run time in column ${column.position} (steps of ${factor} s), about ${Number((1 / usual).toPrecision(2))} rows a second`,
  };
  const stretches = passages.map((passage, i) => ({
    startRow: passage.from,
    endRow: passage.to,
    why: i === 0 ? null : "the engine run time began anew",
  }));
  return { base, stretches };
}

type Passage = { readonly from: number; readonly to: number; readonly changes: readonly number[] };

/** Passages between resets of the count. */
function split(column: RawColumn): Passage[] {
  const changes = changesOf(column);
  const passages: Passage[] = [];
  let from = 0;
  let own: number[] = [];
  for (let i = 0; i < changes.length; i++) {
    const row = changes[i]!;
    if (i > 0 && column.values[row]! < column.values[changes[i - 1]!]!) {
      passages.push({ from, to: row, changes: own });
      from = row;
      own = [];
    }
    own.push(row);
  }
  passages.push({ from, to: column.values.length, changes: own });
  return passages;
}

/** s for one row; 0 where it can't be told. The first count may have stood before the recording began: not used. */
function rateOf(column: RawColumn, passage: Passage, factor: number): number {
  const used = passage.changes.slice(1);
  const first = used[0];
  const last = used.at(-1);
  if (first === undefined || last === undefined || last - first < 10) return 0;
  return ((column.values[last]! - column.values[first]!) * factor) / (last - first);
}

/** Writes the seconds of one passage, starting at `offset`; gives the start of the next. */
function fill(
  seconds: Float64Array,
  column: RawColumn,
  passage: Passage,
  factor: number,
  usual: number,
  offset: number,
): number {
  const knots = smoothKnots(column, passage.changes.slice(1), factor);
  const { from, to } = passage;
  const origin = knots.length === 0 ? 0 : knots[0]!.seconds - (knots[0]!.row - from) * usual;
  let k = 0;
  for (let row = from; row < to; row++) {
    while (k + 1 < knots.length && knots[k + 1]!.row <= row) k++;
    const here = knots[k];
    const next = knots[k + 1];
    let at = (row - from) * usual;
    if (here !== undefined && row >= here.row && next !== undefined) {
      at = here.seconds + ((next.seconds - here.seconds) * (row - here.row)) / (next.row - here.row) - origin;
    } else if (here !== undefined && row >= here.row) at = here.seconds + (row - here.row) * usual - origin;
    seconds[row] = offset + at;
  }
  return seconds[to - 1]! + usual;
}

type Knot = { row: number; seconds: number };

/** Counts are whole seconds read at unknown fractions: a line through the neighbours puts each where it belongs. */
function smoothKnots(column: RawColumn, changes: readonly number[], factor: number): Knot[] {
  const knots: Knot[] = [];
  for (let i = 0; i < changes.length; i++) {
    const near = changes.slice(Math.max(0, i - WINDOW), i + WINDOW + 1);
    const row = changes[i]!;
    const meanRow = near.reduce((sum, r) => sum + r, 0) / near.length;
    const meanTime = near.reduce((sum, r) => sum + column.values[r]!, 0) / near.length;
    let above = 0;
    let below = 0;
    for (const r of near) {
      above += (r - meanRow) * (column.values[r]! - meanTime);
      below += (r - meanRow) ** 2;
    }
    const value = below === 0 ? meanTime : meanTime + (above / below) * (row - meanRow);
    const last = knots.at(-1);
    const time = value * factor;
    if (column.quality[row] === QUALITY.good && (last === undefined || time > last.seconds))
      knots.push({ row, seconds: time });
  }
  return knots;
}
