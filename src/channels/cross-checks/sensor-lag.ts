/**
 * A pressure that follows the air flow later than the polling of the two explains: a slow hose or sensor. Air a revolution
 * (flow over speed) and manifold pressure move together; the shift at which they correlate best is the lag.
 */
import type { Warning } from "../../quantities/index.ts";
import { bestChannel } from "../best-channel.ts";
import type { ChannelSet, RecognisedChannel } from "../channel-set.ts";
import { heldAt } from "../held-track.ts";

/** s, lags looked for on either side, in steps of half the slower reading interval but at least this */
const FARTHEST = 3;
const FINEST = 0.1;
const FEWEST = 60;
const RUNNING = 400 / 60; // 1/s
/** A lag is told if the signals then agree well, and clearly better than without it. */
const AGREES = 0.9;
const BETTER = 0.04;

export function checkLag(set: ChannelSet): Warning[] {
  const speed = bestChannel(set, "engineSpeed");
  const pressure = bestChannel(set, "manifoldPressure");
  const flow = bestChannel(set, "meterFlow");
  if (speed === undefined || pressure === undefined || flow === undefined || flow.standing !== "measured") return [];
  const slowest = Math.max(pressure.pollInterval, flow.pollInterval, speed.pollInterval);
  const schedule = pressure.timeSkew + flow.timeSkew + slowest;
  if (schedule >= FARTHEST) return [];
  const step = Math.max(FINEST, 0.5 * Math.max(pressure.pollInterval, flow.pollInterval));
  const grid = Float64Array.from({ length: Math.floor(set.duration / step) + 1 }, (_, i) => i * step);
  const turning = heldAt(speed, grid);
  const filling = heldAt(flow, grid).map((m, i) => (turning[i]! > RUNNING ? m / turning[i]! : Number.NaN));
  const follower = heldAt(pressure, grid);
  const still = correlation(filling, follower, 0);
  let best = { shift: 0, correlation: still };
  for (let shift = 1; shift * step <= FARTHEST; shift++) {
    for (const signed of [shift, -shift]) {
      const found = correlation(filling, follower, signed);
      if (found > best.correlation) best = { shift: signed, correlation: found };
    }
  }
  const lag = best.shift * step;
  if (Math.abs(lag) <= schedule || best.correlation < AGREES || best.correlation - still < BETTER) return [];
  const [late, early] = lag > 0 ? [pressure, flow] : [flow, pressure];
  return [{ code: "sensor-lag", text: words(late, early, Math.abs(lag), schedule) }];
}

function words(late: RecognisedChannel, early: RecognisedChannel, lag: number, schedule: number): string {
  const names = `"${late.source.header}" follows "${early.source.header}"`;
  return `${names} by about ${lag.toFixed(1)} s; the polling explains ${schedule.toFixed(1)} s at most: a slow hose or sensor.`;
}

/** Correlation of one track with the other read `shift` grid steps later. */
function correlation(track: Float64Array, other: Float64Array, shift: number): number {
  let n = 0;
  let sx = 0;
  let sy = 0;
  let sxx = 0;
  let syy = 0;
  let sxy = 0;
  const from = Math.max(0, -shift);
  const to = Math.min(track.length, other.length - shift);
  for (let i = from; i < to; i++) {
    const x = track[i]!;
    const y = other[i + shift]!;
    if (Number.isNaN(x) || Number.isNaN(y)) continue;
    n++;
    sx += x;
    sy += y;
    sxx += x * x;
    syy += y * y;
    sxy += x * y;
  }
  if (n < FEWEST) return 0;
  const spread = Math.sqrt((sxx - (sx * sx) / n) * (syy - (sy * sy) / n));
  return spread > 0 ? (sxy - (sx * sy) / n) / spread : 0;
}
