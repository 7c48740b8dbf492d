/** A channel read at the times of another: its last good reading at or before each, if that is not too old. */
import { QUALITY } from "../quantities/index.ts";
import type { RecognisedChannel } from "./channel-set.ts";

/** A reading is used until this many of its own intervals have passed without a new one. */
const LASTS = 5;
const LASTS_AT_LEAST = 2; // s

/** NaN where there is no usable reading. */
export function heldAt(channel: RecognisedChannel, times: Float64Array): Float64Array {
  const out = new Float64Array(times.length).fill(Number.NaN);
  const oldest = Math.max(LASTS * channel.pollInterval, LASTS_AT_LEAST);
  let next = 0;
  let last = -1;
  for (let i = 0; i < times.length; i++) {
    const t = times[i]!;
    while (next < channel.times.length && channel.times[next]! <= t) {
      if (channel.quality[next] === QUALITY.good) last = next;
      next++;
    }
    if (last >= 0 && t - channel.times[last]! <= oldest) out[i] = channel.values[last]!;
  }
  return out;
}

const QUANTILE_SAMPLE = 4_000;

/** Quantile of the values that are numbers, from an even sample of them where they are many; NaN where none is. */
export function quantile(values: Float64Array, share: number): number {
  const stride = Math.max(1, Math.floor(values.length / QUANTILE_SAMPLE));
  const sorted = new Float64Array(Math.ceil(values.length / stride));
  let kept = 0;
  for (let i = 0; i < values.length; i += stride) if (!Number.isNaN(values[i]!)) sorted[kept++] = values[i]!;
  if (kept === 0) return Number.NaN;
  return sorted.subarray(0, kept).sort()[Math.min(kept - 1, Math.floor(share * kept))]!;
}
