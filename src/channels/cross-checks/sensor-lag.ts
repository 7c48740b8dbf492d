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
const FINEST = 0.05;
const FEWEST = 60;
/** A lag is told if the signals then agree well, and clearly better than without it. */
const AGREES = 0.9;
const BETTER = 0.04;

export function checkLag(set: ChannelSet): Warning[] {
  const speed = bestChannel(set, "engineSpeed");
  const pressure = bestChannel(set, "manifoldPressure");
  const flow = bestChannel(set, "meterFlow");
  if (speed === undefined || pressure === undefined || flow === undefined || flow.standing !== "measured") return [];
  const turning = heldAt(speed, flow.times);
  const filling = flow.values.map((m, i) =>
    flow.quality[i] === 0 && turning[i]! > 400 / 60 ? m / turning[i]! : Number.NaN,
  );
  const schedule =
    pressure.timeSkew + flow.timeSkew + Math.max(pressure.pollInterval, flow.pollInterval, speed.pollInterval);
  const step = Math.max(FINEST, 0.5 * Math.max(pressure.pollInterval, flow.pollInterval));
  if (schedule >= FARTHEST) return [];
  let best = { lag: 0, correlation: correlationAt(pressure, flow.times, filling, 0) };
  const still = best.correlation;
  for (let lag = step; lag <= FARTHEST; lag += step) {
    for (const shift of [lag, -lag]) {
      const correlation = correlationAt(pressure, flow.times, filling, shift);
      if (correlation > best.correlation) best = { lag: shift, correlation };
    }
  }
  const told = Math.abs(best.lag) > schedule && best.correlation > AGREES && best.correlation - still > BETTER;
  if (!told) return [];
  const [late, early] = best.lag > 0 ? [pressure, flow] : [flow, pressure];
  return [
    {
      code: "sensor-lag",
      text: `"${late.source.header}" follows "${early.source.header}" by about ${Math.abs(best.lag).toFixed(1)} s; the polling explains ${schedule.toFixed(1)} s at most: a slow hose or sensor.`,
    },
  ];
}

/** Correlation of the filling with the pressure read `lag` later. */
function correlationAt(pressure: RecognisedChannel, times: Float64Array, filling: Float64Array, lag: number): number {
  const later = heldAt(
    pressure,
    times.map((time) => time + lag),
  );
  let n = 0;
  let sx = 0;
  let sy = 0;
  let sxx = 0;
  let syy = 0;
  let sxy = 0;
  for (let i = 0; i < times.length; i++) {
    const x = filling[i]!;
    const y = later[i]!;
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
