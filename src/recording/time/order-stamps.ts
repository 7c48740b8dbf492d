/**
 * Time stamps as written into seconds that never fall. Stamps that were lost are filled between their neighbours; where
 * the clock jumps, stands or runs backward a new stretch begins, and nothing is bridged.
 */
import type { Warning } from "../../quantities/index.ts";
import type { RowStretch } from "../recording.ts";
import { Remarks } from "../remarks.ts";

export type OrderedStamps = {
  readonly seconds: Float64Array;
  readonly stretches: readonly RowStretch[];
  readonly resolution: number;
  readonly interval: number;
  /** rows shared stamps, because the clock is coarser than the rows */
  readonly spread: boolean;
  readonly warnings: readonly Warning[];
};

/** A step this many times the usual one is a gap. */
const GAP_FACTOR = 5;
/** s, no step shorter than this is called a gap */
const GAP_AT_LEAST = 1;

type Context = { readonly lines: Uint32Array; readonly restarts: readonly number[] };

export function orderStamps(raw: Float64Array, factor: number, wraps: number | null, context: Context): OrderedStamps {
  const remarks = new Remarks();
  const seconds = filled(raw, factor, remarks, context.lines);
  if (wraps !== null) unwrap(seconds, wraps);
  const stampStep = medianStep(seconds);
  const interval = rowInterval(seconds, stampStep);
  const coarse = stampStep > 1.5 * interval;
  if (coarse) spreadShared(seconds, interval, stampStep);
  const starts = new Map<number, string>();
  const usual = Math.max(interval, coarse ? stampStep : 0);
  for (const row of context.restarts) {
    // A log printed page by page repeats its header while its time runs on: that is no new recording.
    const step = row === 0 ? 0 : seconds[row]! - seconds[row - 1]!;
    if (!(step > 0 && step < 2 * usual)) starts.set(row, "the header is repeated: recording began anew");
  }
  const gap = Math.max(GAP_FACTOR * usual, GAP_AT_LEAST);
  let shift = -(seconds[0] ?? 0);
  let last = seconds[0] ?? 0;
  for (let i = 0; i < seconds.length; i++) {
    const stamp = seconds[i]!;
    const step = stamp - last;
    if (i > 0 && step < 0) {
      // How long the recording really paused can't be known: the new stretch follows at the usual interval.
      shift += last - stamp + interval;
      starts.set(i, `the time runs backward at line ${context.lines[i]}`);
      remarks.add("time-backward", context.lines[i]!);
    } else if (i > 0 && step === 0) {
      starts.set(i, `the time stands still at line ${context.lines[i]}`);
      remarks.add("time-repeated", context.lines[i]!);
    } else if (step > gap) {
      starts.set(i, `no rows for ${Number(step.toPrecision(3))} s before line ${context.lines[i]}`);
      remarks.add("gap", context.lines[i]!);
    }
    last = stamp;
    seconds[i] = stamp + shift;
  }
  return {
    seconds,
    stretches: stretchesFrom(starts, seconds.length),
    resolution: coarse ? stampStep : 0,
    interval,
    spread: coarse,
    warnings: warningsOf(remarks),
  };
}

/** Seconds with lost stamps put evenly between their neighbours (at the ends: equal to the nearest). */
function filled(raw: Float64Array, factor: number, remarks: Remarks, lines: Uint32Array): Float64Array {
  const seconds = new Float64Array(raw.length);
  let known = -1;
  for (let i = 0; i < raw.length; i++) {
    const value = raw[i]! * factor;
    if (Number.isNaN(value)) {
      remarks.add("time-missing", lines[i]!);
      continue;
    }
    seconds[i] = value;
    const from = known < 0 ? value : seconds[known]!;
    for (let k = known + 1; k < i; k++) seconds[k] = from + ((value - from) * (k - known)) / (i - known);
    known = i;
  }
  const end = known < 0 ? 0 : seconds[known]!;
  for (let k = known + 1; k < raw.length; k++) seconds[k] = end;
  return seconds;
}

/** A clock that falls by more than half a day has passed midnight. */
function unwrap(seconds: Float64Array, period: number): void {
  let shift = 0;
  let last = seconds[0] ?? 0;
  for (let i = 1; i < seconds.length; i++) {
    const stamp = seconds[i]!;
    if (stamp < last - period / 2) shift += period;
    last = stamp;
    seconds[i] = stamp + shift;
  }
}

/** Median of the positive steps between neighbours; 0 where there is none. */
export function medianStep(stamps: Float64Array): number {
  const steps: number[] = [];
  const stride = Math.max(1, Math.floor(stamps.length / 20_000));
  for (let i = 1; i < stamps.length; i += stride) {
    const step = stamps[i]! - stamps[i - 1]!;
    if (step > 0) steps.push(step);
  }
  if (steps.length === 0 && stride > 1) return medianStep(stamps.subarray(0, 20_000));
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1] ?? 0;
}

/** Usual time from row to row: the stamp step shared among the rows that carry one stamp; first and last may be cut. */
function rowInterval(seconds: Float64Array, stampStep: number): number {
  let stamps = 0;
  let rows = 0;
  let run = 1;
  let first = true;
  for (let i = 1; i < seconds.length; i++) {
    const step = seconds[i]! - seconds[i - 1]!;
    if (step === 0) {
      run++;
      continue;
    }
    if (!first && step > 0 && step < GAP_FACTOR * stampStep) {
      rows += run;
      stamps++;
    }
    first = false;
    run = 1;
  }
  // A stamp that comes twice now and then is a fault of the clock, not its coarseness.
  return rows === 0 || stamps > 0.7 * rows ? stampStep : (stampStep * stamps) / rows;
}

/** Rows that share a stamp, spread evenly up to the next stamp (at most one usual step of it). */
function spreadShared(seconds: Float64Array, interval: number, stampStep: number): void {
  let from = 0;
  for (let i = 1; i <= seconds.length; i++) {
    if (i < seconds.length && seconds[i] === seconds[from]) continue;
    const count = i - from;
    const stamp = seconds[from]!;
    const next = i < seconds.length ? seconds[i]! - stamp : stampStep;
    const span = next > 0 && next < 2 * stampStep ? next : stampStep;
    // The first stamp may have begun before the recording did: its rows stand at its end.
    const offset = from === 0 ? Math.max(0, span - count * interval) : 0;
    for (let k = 0; k < count; k++) seconds[from + k] = stamp + offset + ((span - offset) * k) / count;
    from = i;
  }
}

function stretchesFrom(starts: ReadonlyMap<number, string>, rows: number): RowStretch[] {
  const firsts = [...starts.keys()].filter((row) => row > 0 && row < rows).sort((a, b) => a - b);
  return [0, ...firsts].map((startRow, i) => ({
    startRow,
    endRow: firsts[i] ?? rows,
    why: i === 0 ? null : (starts.get(startRow) ?? null),
  }));
}

function warningsOf(remarks: Remarks): Warning[] {
  return [
    ...remarks.warning(
      "time-backward",
      (n, at) => `The time runs backward ${times(n)} (${at}): the recording is split there.`,
    ),
    ...remarks.warning(
      "time-repeated",
      (n, at) => `The time stands still ${times(n)} (${at}): the recording is split there.`,
    ),
    ...remarks.warning("gap", (n, at) => `Rows are missing ${times(n)} (before ${at}): the recording is split there.`),
    ...remarks.warning(
      "time-missing",
      (n, at) => `${n === 1 ? "One row has" : `${n} rows have`} no time (${at}): put between their neighbours.`,
    ),
  ];
}

function times(n: number): string {
  return n === 1 ? "once" : `${n} times`;
}
