/**
 * What goes wrong on the way from engine to file: readings lost for a while, a channel that keeps its last value.
 * Rates and lengths are the caller's; when they happen is seeded.
 */
import type { SeededRandom } from "../numerics/index.ts";

export type Blemishes = {
  /** rows lost: how often, and the mean length in s */
  readonly dropouts?: { readonly perMinute: number; readonly seconds: number };
  /** channel `column` (counted from 0, without the time) repeats its value from `from` on, in s */
  readonly stuck?: readonly { readonly column: number; readonly from: number; readonly seconds: number }[];
};

/** Rows are time in s, then one value a channel; NaN is an empty cell and stays one. */
export function blemish(rows: readonly Float64Array[], blemishes: Blemishes, random: SeededRandom): Float64Array[] {
  const held = (blemishes.stuck ?? []).reduce(
    stick,
    rows.map((row) => row.slice()),
  );
  const { dropouts } = blemishes;
  if (dropouts === undefined) return held;
  const gaps = drawGaps(rows.at(-1)?.[0] ?? 0, dropouts, random);
  return held.filter((row) => !gaps.some(([from, to]) => row[0]! >= from && row[0]! < to));
}

function stick(
  rows: Float64Array[],
  stuck: { readonly column: number; readonly from: number; readonly seconds: number },
): Float64Array[] {
  const cell = stuck.column + 1;
  const from = rows.findIndex((row) => row[0]! >= stuck.from && !Number.isNaN(row[cell]!));
  const value = rows[from]?.[cell];
  if (value === undefined) return rows;
  for (const row of rows.slice(from)) {
    if (row[0]! > stuck.from + stuck.seconds) break;
    if (!Number.isNaN(row[cell]!)) row[cell] = value;
  }
  return rows;
}

/** Waiting times and lengths are exponential. */
function drawGaps(
  end: number,
  dropouts: { readonly perMinute: number; readonly seconds: number },
  random: SeededRandom,
): [number, number][] {
  const waiting = (mean: number) => -mean * Math.log(1 - random.uniform());
  const gaps: [number, number][] = [];
  for (let time = waiting(60 / dropouts.perMinute); time < end; ) {
    const length = waiting(dropouts.seconds);
    gaps.push([time, time + length]);
    time += length + waiting(60 / dropouts.perMinute);
  }
  return gaps;
}
