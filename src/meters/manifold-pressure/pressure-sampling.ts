/**
 * What sampling does to a pulsating manifold pressure: the mean of a few samples is off by what the pulsation leaves in them.
 *
 * Equation    |error of the mean| <= a |sin(n pi f h)/(n sin(pi f h))|                                           (1)
 * Symbols     a Pa amplitude of the pulsation at f Hz | h s sample interval | n samples
 * Validity    n >= 1, f, h > 0 (asserted). A whole number of intake strokes in n h makes it zero; sampling in step with the strokes
 *             (f h whole) leaves all of it
 * Source      sum of a geometric series                                      Check  manifold-pressure.test.ts
 */
import { requirePositive } from "../../numerics/index.ts";

export function sampledMeanError(at: {
  readonly amplitude: number;
  readonly frequency: number;
  readonly interval: number;
  readonly samples: number;
}): number {
  const { amplitude, frequency, interval, samples } = at;
  requirePositive("frequency", frequency);
  requirePositive("interval", interval);
  requirePositive("number of samples", samples);
  const turn = Math.PI * frequency * interval;
  const down = samples * Math.sin(turn);
  if (Math.abs(down) < 1e-12) return amplitude;
  return amplitude * Math.abs(Math.sin(samples * turn) / down);
}

/** Hz: a four-stroke engine draws N/2 times the number of cylinders that share the manifold. */
export function intakePulseFrequency(engineSpeed: number, cylinders: number): number {
  return (engineSpeed * cylinders) / 2;
}
