/**
 * How finely a frequency is known after a time: by counting pulses, or by timing whole periods with a clock.
 *
 * Equation    counting:  df/f = 1/(f t)                       one count in f t                                   (1)
 *             timing:    df/f = c/(n T)                       clock step c over n periods of T = 1/f              (2)
 * Symbols     f Hz | t s gate | c s clock step | n whole periods in the gate
 * Validity    f, t > 0 (asserted); widths are whole (rectangular), the standard uncertainty is width/sqrt(12)
 * Source      definition
 */
import { requirePositive } from "../../numerics/index.ts";

export function countingResolution(frequency: number, gate: number): number {
  requirePositive("frequency", frequency);
  requirePositive("gate", gate);
  return 1 / (frequency * gate);
}

export function timingResolution(frequency: number, gate: number, clockStep: number): number {
  requirePositive("frequency", frequency);
  requirePositive("gate", gate);
  const periods = Math.max(1, Math.floor(frequency * gate));
  return (clockStep * frequency) / periods;
}

/** Gate that is needed to resolve a flow to a relative width by counting. */
export function gateForResolution(frequency: number, relativeWidth: number): number {
  requirePositive("frequency", frequency);
  requirePositive("relative width", relativeWidth);
  return 1 / (frequency * relativeWidth);
}
