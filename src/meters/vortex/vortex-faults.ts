/**
 * How a vortex meter goes wrong: pulses missed, and shedding that locks to a pulsation of the intake.
 *
 * Equation    missed pulses:  reading/truth = 1 - share                                                         (1)
 *             lock-in:        f_read = f_p/2 where |2 f/f_p - 1| <= w b, else f                                  (2)
 * Symbols     f Hz free shedding | f_p Hz pulsation along the stream | b amplitude over the mean | w half width of the lock-in band for
 *             unit amplitude
 * Validity    0 <= share < 1, b >= 0 (asserted). (2) is the middle of what is seen: real bands are ragged
 * Source      common practice, no source: an oscillation along the stream at twice the shedding frequency takes it along; w of order 1
 */
import { requirePositive, requireWithin } from "../../numerics/index.ts";

export function missedPulsesRatio(share: number): number {
  requireWithin("share of pulses missed", share, 0, 1 - Number.EPSILON);
  return 1 - share;
}

export function lockedFrequency(at: {
  readonly sheddingFrequency: number;
  readonly pulsationFrequency: number;
  readonly amplitude: number;
  readonly bandWidth?: number;
}): { readonly frequency: number; readonly locked: boolean } {
  const { sheddingFrequency, pulsationFrequency, amplitude, bandWidth = 1 } = at;
  requirePositive("shedding frequency", sheddingFrequency);
  requirePositive("pulsation frequency", pulsationFrequency);
  requireWithin("amplitude", amplitude, 0, Number.MAX_VALUE);
  const distance = Math.abs((2 * sheddingFrequency) / pulsationFrequency - 1);
  const locked = distance <= bandWidth * amplitude;
  return { frequency: locked ? pulsationFrequency / 2 : sheddingFrequency, locked };
}
