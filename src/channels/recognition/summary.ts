/** What the values of one column look like: enough to judge what they can be, from a bounded sample. */
import { QUALITY } from "../../quantities/index.ts";
import type { RawColumn } from "../../recording/index.ts";

export type Summary = {
  /** good values, ascending, at most SAMPLE of them, taken evenly over the recording */
  readonly sorted: Float64Array;
  /** of all good values */
  readonly count: number;
  readonly low: number;
  readonly high: number;
  readonly median: number;
  readonly constant: boolean;
  /** smallest step between different values of the sample; null where they look continuous */
  readonly step: number | null;
  /** median while the engine stood; null where that is not recorded */
  readonly atRest: number | null;
};

const SAMPLE = 1_200;
/** rows with the engine standing that are enough to tell what a sensor reads then */
const REST_ROWS = 3;

/** `resting` tells the rows in which the engine stood, where that is known. */
export function summarise(column: RawColumn, resting: Uint8Array | null): Summary {
  const { values, quality } = column;
  let count = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    if (quality[i] !== QUALITY.good) continue;
    count++;
    const value = values[i]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const stride = Math.max(1, Math.floor(count / SAMPLE));
  const sample = new Float64Array(Math.ceil(count / stride));
  let seen = 0;
  let kept = 0;
  for (let i = 0; i < values.length; i++) {
    if (quality[i] !== QUALITY.good) continue;
    if (seen++ % stride === 0 && kept < sample.length) sample[kept++] = values[i]!;
  }
  const sorted = sample.subarray(0, kept).sort();
  return {
    sorted,
    count,
    low,
    high,
    median: sorted[sorted.length >> 1] ?? Number.NaN,
    constant: count > 0 && low === high,
    step: smallestStep(sorted),
    atRest: resting === null ? null : restingMedian(column, resting),
  };
}

function restingMedian({ values, quality }: RawColumn, resting: Uint8Array): number | null {
  const rest = values.filter((_, i) => resting[i] === 1 && quality[i] === QUALITY.good).sort();
  return rest.length < REST_ROWS ? null : rest[rest.length >> 1]!;
}

/** Smallest step between neighbouring different values; null where hardly any value repeats. */
export function smallestStep(sorted: Float64Array): number | null {
  let different = 0;
  let smallest = Number.POSITIVE_INFINITY;
  for (let i = 1; i < sorted.length; i++) {
    const step = sorted[i]! - sorted[i - 1]!;
    if (step <= 0) continue;
    different++;
    if (step < smallest) smallest = step;
  }
  if (different === 0 || (sorted.length > 40 && different > 0.8 * sorted.length)) return null;
  return smallest;
}
