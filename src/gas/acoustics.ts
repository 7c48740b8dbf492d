/**
 * Resonances of intake parts: a volume behind a neck, a pipe closed at one end.
 *
 * Equation    f = a/(2 pi) sqrt(A/(V L))                      Helmholtz                                          (1)
 *             f_n = (2n - 1) a/(4 L)                          quarter wave                                       (2)
 *             L = L_neck + 0.85 r for each flanged end                                                          (3)
 * Symbols     f Hz | a m/s speed of sound | A m2 neck area | V m3 | L m effective length | r m neck radius | n = 1, 2, ...
 * Validity    lengths, areas, volumes > 0 (asserted); wave length long against the neck in (1)
 * Source      [kinsler2000] ch. 10; (3) for a flanged end                    Check published/acoustics.test.ts
 */
import { requirePositive } from "../numerics/index.ts";

export function helmholtzFrequency(resonator: {
  readonly speedOfSound: number;
  readonly neckArea: number;
  readonly effectiveLength: number;
  readonly volume: number;
}): number {
  const { speedOfSound, neckArea, effectiveLength, volume } = resonator;
  requirePositive("speed of sound", speedOfSound);
  requirePositive("neck area", neckArea);
  requirePositive("effective length", effectiveLength);
  requirePositive("volume", volume);
  return (speedOfSound / (2 * Math.PI)) * Math.sqrt(neckArea / (volume * effectiveLength));
}

/** (3); an end in free air has 0.61 r instead of 0.85 r [kinsler2000]. */
export function effectiveNeckLength(length: number, radius: number, flangedEnds: 0 | 1 | 2): number {
  requirePositive("length", length);
  return length + 0.85 * radius * flangedEnds;
}

/** (2), n-th resonance of a pipe open at one end. */
export function quarterWaveFrequency(length: number, speedOfSound: number, order = 1): number {
  requirePositive("length", length);
  requirePositive("speed of sound", speedOfSound);
  return ((2 * order - 1) * speedOfSound) / (4 * length);
}
