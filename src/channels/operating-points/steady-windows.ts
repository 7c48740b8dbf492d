/**
 * Where the engine ran steadily enough for its witnesses to be compared: windows in which speed, pressure and meter each
 * stay within a band. A passage that never settles still gives short windows, marked as moving: their slopes widen their
 * uncertainty (read-window.ts), so they count for what they are worth.
 */
import { QUALITY } from "../../quantities/index.ts";
import type { RecognisedChannel } from "../channel-set.ts";

export type Window = { readonly start: number; readonly end: number; readonly moving: boolean };

/** Widest range of ln(value) inside a steady and inside a moving window. Common practice, no source. */
const STEADY_RANGE = 0.08;
const MOVING_RANGE = 0.35;
const LONGEST = 20; // s

export type KeyChannel = {
  readonly channel: RecognisedChannel /** allowed range as a multiple of the bands above */;
  readonly slack: number;
};

export function steadyWindows(keys: readonly KeyChannel[], start: number, end: number): Window[] {
  const slowest = Math.max(...keys.map((k) => k.channel.pollInterval));
  const shortest = Math.max(2, 2.5 * slowest);
  const step = Math.max(0.1, Math.min(shortest / 8, 1));
  const tracks = keys.map((k) => ({ track: sampleLog(k.channel, start, end, step), slack: k.slack }));
  const count = Math.floor((end - start) / step);
  const windows: Window[] = [];
  const enough = Math.ceil(shortest / step);
  let from = 0;
  while (from + enough <= count) {
    const steadyTo = extend(tracks, from, Math.min(count, from + Math.round(LONGEST / step)), STEADY_RANGE);
    if (steadyTo - from >= enough) {
      windows.push({ start: start + from * step, end: start + steadyTo * step, moving: false });
      from = steadyTo;
      continue;
    }
    const movingTo = extend(tracks, from, from + enough, MOVING_RANGE);
    if (movingTo - from >= enough) {
      windows.push({ start: start + from * step, end: start + movingTo * step, moving: true });
      from = movingTo;
    } else {
      from = Math.max(from + 1, movingTo - enough + 1);
    }
  }
  return windows;
}

/** First index at which some track has left its band or is not known. */
function extend(
  tracks: readonly { track: Float64Array; slack: number }[],
  from: number,
  limit: number,
  range: number,
): number {
  let reach = limit;
  for (const { track, slack } of tracks) {
    let low = Infinity;
    let high = -Infinity;
    for (let i = from; i < reach; i++) {
      const value = track[i]!;
      if (Number.isNaN(value)) {
        reach = i;
        break;
      }
      low = Math.min(low, value);
      high = Math.max(high, value);
      if (high - low > range * slack) {
        reach = i;
        break;
      }
    }
  }
  return reach;
}

/** ln of the channel on an even grid by straight lines between good readings; NaN across gaps and where it is not positive. */
function sampleLog(channel: RecognisedChannel, start: number, end: number, step: number): Float64Array {
  const { times, values, quality } = channel;
  const gap = Math.max(3 * channel.pollInterval, 1.5);
  const count = Math.max(0, Math.floor((end - start) / step) + 1);
  const out = new Float64Array(count).fill(Number.NaN);
  let before = -1;
  let after = 0;
  for (let k = 0; k < count; k++) {
    const t = start + k * step;
    while (after < times.length && (times[after]! <= t || quality[after] !== QUALITY.good)) {
      if (quality[after] === QUALITY.good) before = after;
      after++;
    }
    if (before < 0) continue;
    const t0 = times[before]!;
    const x0 = values[before]!;
    let value = x0;
    if (after < times.length) {
      if (times[after]! - t0 > gap && t - t0 > gap / 2) continue;
      value = x0 + ((values[after]! - x0) * (t - t0)) / Math.max(times[after]! - t0, 1e-9);
    } else if (t - t0 > gap) continue;
    if (value > 0) out[k] = Math.log(value);
  }
  return out;
}
