/**
 * A pressure that follows the air flow later than the polling of the two explains: a slow hose or sensor. Air a revolution
 * (flow over speed) and manifold pressure move together; the shift at which they correlate best is the lag. Changes over a
 * second or two are compared beside levels: minutes of steady running agree at any shift.
 */
import type { Warning } from "../../quantities/index.ts";
import { bestChannel } from "../best-channel.ts";
import type { ChannelSet, RecognisedChannel } from "../channel-set.ts";
import { heldAt } from "../held-track.ts";

/** s, lags looked for on either side, in steps of half the slower reading interval but at least this */
const FARTHEST = 3;
const FINEST = 0.1;
const FEWEST = 60;
/** s over which changes are taken */
const CHANGE = 1;
const RUNNING = 400 / 60; // 1/s
/**
 * A lag is told if the signals then agree, and clearly better than without it. Of invented engines this finds slow hoses of 0.6 s
 * in fast recordings and of 2 s in polled ones, and none where there is none.
 */
const LEVELS = { agrees: 0.9, better: 0.04 };
const CHANGES = { agrees: 0.65, better: 0.12 };

export function checkLag(set: ChannelSet): Warning[] {
  const speed = bestChannel(set, "engineSpeed");
  const pressure = bestChannel(set, "manifoldPressure");
  const air = airSignal(set);
  if (speed === undefined || pressure === undefined || air === null) return [];
  const { channel: flow, toFlow } = air;
  const slowest = Math.max(pressure.pollInterval, flow.pollInterval, speed.pollInterval);
  const schedule = pressure.timeSkew + flow.timeSkew + slowest;
  if (schedule >= FARTHEST) return [];
  const step = Math.max(FINEST, 0.5 * Math.max(pressure.pollInterval, flow.pollInterval));
  const grid = Float64Array.from({ length: Math.floor(set.duration / step) + 1 }, (_, i) => i * step);
  const turning = heldAt(speed, grid);
  const whileRunning = (track: Float64Array) => track.map((x, i) => (turning[i]! > RUNNING ? x : Number.NaN));
  const filling = whileRunning(heldAt(flow, grid).map((m, i) => toFlow(m) / turning[i]!));
  const follower = whileRunning(heldAt(pressure, grid));
  const over = Math.ceil(Math.max(CHANGE, 2 * slowest) / step);
  const shift =
    lateBy(filling, follower, step, schedule, LEVELS) ??
    lateBy(changes(filling, over), changes(follower, over), step, schedule, CHANGES);
  if (shift === null) return [];
  const [late, early] = shift > 0 ? [pressure, flow] : [flow, pressure];
  return [{ code: "sensor-lag", text: words(late, early, Math.abs(shift), schedule) }];
}

/** s by which the second signal is late; null where that is within the schedule or not clear. */
function lateBy(
  first: Float64Array,
  second: Float64Array,
  step: number,
  schedule: number,
  { agrees, better }: typeof LEVELS,
): number | null {
  const still = correlation(first, second, 0);
  let best = { shift: 0, correlation: still };
  for (let shift = 1; shift * step <= FARTHEST; shift++) {
    for (const signed of [shift, -shift]) {
      const found = correlation(first, second, signed);
      if (found > best.correlation) best = { shift: signed, correlation: found };
    }
  }
  const lag = best.shift * step;
  return Math.abs(lag) <= schedule || best.correlation < agrees || best.correlation - still < better ? null : lag;
}

/**
 * The meter as something that grows with its flow: reported, or the raw signal. A heated meter's voltage follows King's law,
 * m ~ (V^2 - V_0^2)^2; the lowest voltage of the recording stands for V_0.
 */
function airSignal(
  set: ChannelSet,
): { readonly channel: RecognisedChannel; readonly toFlow: (x: number) => number } | null {
  for (const quantity of ["meterFlow", "meterVolumeFlow", "meterFrequency"] as const) {
    const channel = bestChannel(set, quantity);
    if (channel?.standing === "measured") return { channel, toFlow: (x) => x };
  }
  const volts = bestChannel(set, "meterVoltage");
  if (volts?.standing !== "measured") return null;
  const rest = volts.values.reduce((least, v) => Math.min(least, v), Infinity);
  return { channel: volts, toFlow: (v) => (v * v - rest * rest) ** 2 };
}

/** x(t + over) - x(t), NaN where either is. */
function changes(track: Float64Array, over: number): Float64Array {
  return track.map((x, i) => (i + over < track.length ? track[i + over]! - x : Number.NaN));
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
