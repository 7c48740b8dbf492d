/**
 * What a wire reads in a pulsating stream u = 1 + b sin(wt), for the ways its signal is averaged.
 *
 * Equation    before reversal, b <= 1, E^2 averaged before it is linearised, E^2 ~ u^n:
 *               reading/truth = (<u^n>)^(1/n),  <u^n> = F(-n/2, (1-n)/2; 1; b^2)          under-reads            (1)
 *             after reversal, b > 1, linearised at once, direction lost:
 *               reading/truth = <|u|> = (2/pi)(asin(1/b) + sqrt(b^2 - 1))                 over-reads             (2)
 *             both at once: <|u|^n>^(1/n) by quadrature                                                          (3)
 * Symbols     b amplitude over the mean | n exponent of King's law, n/2 where E itself is averaged and A is small | F Gauss series
 * Validity    b >= 0, 0 < n <= 1 (asserted); response much faster than the pulsation
 * Source      (1) binomial series of the mean; (2) integrated here           Check  published/hot-wire.test.ts
 */
import { requireWithin } from "../../numerics/index.ts";

/** <u^n> of (1). */
export function meanPower(amplitude: number, exponent: number): number {
  requireWithin("amplitude", amplitude, 0, 1);
  requireWithin("exponent", exponent, 0, 1);
  const z = amplitude * amplitude;
  let term = 1;
  let sum = 1;
  // at b = 1 the terms fall like k^-(n + 3/2): the tail is added by its integral
  for (let k = 0; k < 20_000 && Math.abs(term) > 1e-17; k++) {
    term *= ((k - exponent / 2) * (k + (1 - exponent) / 2) * z) / ((k + 1) * (k + 1));
    sum += term;
    if (k === 19_999 && z === 1) sum += (term * (k + 1)) / (exponent + 0.5);
  }
  return sum;
}

/** (1) */
export function averagedBeforeLinearising(amplitude: number, exponent: number): number {
  return meanPower(amplitude, exponent) ** (1 / exponent);
}

/** (2); 1 up to b = 1 */
export function rectifiedMean(amplitude: number): number {
  requireWithin("amplitude", amplitude, 0, Number.MAX_VALUE);
  if (amplitude <= 1) return 1;
  return (2 / Math.PI) * (Math.asin(1 / amplitude) + Math.sqrt(amplitude * amplitude - 1));
}

/** Mean of |a + b sin| for any mean flow a, 0 included. */
export function rectifiedMeanOf(mean: number, amplitude: number): number {
  const a = Math.abs(mean);
  const b = Math.abs(amplitude);
  if (b <= a) return a;
  return (2 / Math.PI) * (a * Math.asin(a / b) + Math.sqrt(b * b - a * a));
}

/**
 * (3) for any curve: the signal is averaged over a turn, then read off the curve. `signalOf` and `flowOf` are the curve both
 * ways, in flow over the mean. Trapezoid over `steps` points of the turn, which is exact to rounding for smooth signals.
 */
export function averagedSignalRatio(
  amplitude: number,
  signalOf: (flow: number) => number,
  flowOf: (signal: number) => number,
  steps = 4096,
): number {
  let sum = 0;
  for (let i = 0; i < steps; i++)
    sum += signalOf(Math.abs(1 + amplitude * Math.sin((2 * Math.PI * (i + 0.5)) / steps)));
  return flowOf(sum / steps);
}
