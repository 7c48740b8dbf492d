/**
 * One channel over one window: a robust straight line through its real readings, taken at the middle.
 *
 * Equation    x(t) = a + b (t - t_mid), weights min(1, 2.5 s / |r|) once, s = 1.4826 median |r|
 *             var(a) = s_r^2 / n_eff + q^2/12 + (b tau)^2
 *             n_eff = n (1 - rho)/(1 + rho), rho = lag-one autocorrelation of the residuals, 0 <= rho < 1
 * Symbols     s_r scatter about the line | q resolution | tau time skew of the channel's stamps
 * Why         quantisation does not average away; readings that follow each other are not independent; polled channels
 *             are known in time only to tau
 * Source      JCGM 100:2008 (GUM) F.2.2.1 for q^2/12; [bayley1946] for the effective number
 */
import { QUALITY } from "../../quantities/index.ts";
import type { RecognisedChannel } from "../channel-set.ts";
import type { Reading } from "./operating-point.ts";

/** First index with times[i] >= t. */
export function firstAtOrAfter(times: Float64Array, t: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! < t) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Null where the channel has no good reading near the window. A slow channel (temperatures, barometer) that was not read
 * inside the window is taken from its last reading before it, at most `memory` s earlier.
 */
export function readWindow(channel: RecognisedChannel, start: number, end: number, memory: number): Reading | null {
  const { times, values, quality } = channel;
  const from = firstAtOrAfter(times, start);
  const to = firstAtOrAfter(times, end);
  const t: number[] = [];
  const x: number[] = [];
  for (let i = from; i < to; i++) {
    if (quality[i] !== QUALITY.good) continue;
    t.push(times[i]! - (start + end) / 2);
    x.push(values[i]!);
  }
  if (x.length === 0) {
    for (let i = from - 1; i >= 0 && times[i]! > start - memory; i--) {
      if (quality[i] === QUALITY.good) return lineReading([0], [values[i]!], channel);
    }
    return null;
  }
  return lineReading(t, x, channel);
}

/** readings beyond this many spreads from the line count less */
const BAND = 2.5;

function lineReading(t: readonly number[], x: readonly number[], channel: RecognisedChannel): Reading {
  const n = x.length;
  let line = weightedLine(t, x, null);
  if (n >= 5) {
    const sizes = new Float64Array(n);
    for (let i = 0; i < n; i++) sizes[i] = Math.abs(x[i]! - line.a - line.b * t[i]!);
    const spread = 1.4826 * median(sizes.slice());
    // Weights change nothing where no reading lies beyond the band.
    if (spread > 0 && sizes.some((r) => r > BAND * spread)) {
      line = weightedLine(
        t,
        x,
        sizes.map((r) => Math.min(1, (BAND * spread) / Math.max(r, 1e-300))),
      );
    }
  }
  let squares = 0;
  let products = 0;
  let previous = 0;
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < n; i++) {
    const r = x[i]! - line.a - line.b * t[i]!;
    squares += r * r;
    if (i > 0) products += r * previous;
    previous = r;
    low = Math.min(low, x[i]!);
    high = Math.max(high, x[i]!);
  }
  // Two or three readings can't tell a trend from scatter: half of their range stands for both.
  const scatter = n > 3 ? Math.sqrt(squares / (n - 2)) : (high - low) / 2;
  const rho = squares > 0 ? Math.min(0.95, Math.max(0, products / squares)) : 0;
  const effective = n > 3 ? Math.max(1, (n * (1 - rho)) / (1 + rho)) : 1;
  const resolution = channel.resolution ?? 0;
  const variance = scatter ** 2 / effective + resolution ** 2 / 12 + (line.b * channel.timeSkew) ** 2;
  return { mean: line.a, variance, slope: line.b, scatter, low, high, samples: n };
}

/** Least squares with weights; all equal where null. */
function weightedLine(
  t: readonly number[],
  x: readonly number[],
  weights: Float64Array | null,
): { readonly a: number; readonly b: number } {
  let sw = 0;
  let st = 0;
  let sx = 0;
  for (let i = 0; i < t.length; i++) {
    const w = weights === null ? 1 : weights[i]!;
    sw += w;
    st += w * t[i]!;
    sx += w * x[i]!;
  }
  const tm = st / sw;
  const xm = sx / sw;
  let tt = 0;
  let tx = 0;
  for (let i = 0; i < t.length; i++) {
    const w = weights === null ? 1 : weights[i]!;
    tt += w * (t[i]! - tm) ** 2;
    tx += w * (t[i]! - tm) * (x[i]! - xm);
  }
  // A slope from two or three readings is noise: then the mean stands for the window.
  const b = t.length >= 4 && tt > 0 ? tx / tt : 0;
  return { a: xm - b * tm, b };
}

/** Sorts its argument. */
function median(values: Float64Array): number {
  values.sort();
  const middle = values.length >> 1;
  return values.length % 2 === 1 ? values[middle]! : (values[middle - 1]! + values[middle]!) / 2;
}
