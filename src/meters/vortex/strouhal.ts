/**
 * Strouhal number of a bluff body, and the pulses of a pipe meter for each cubic metre.
 *
 * Equation    St = 0.212 (1 - 21.2/Re)                        50 <= Re <= 150                                    (1)
 *             St = 0.212 (1 - 12.7/Re)                        300 <= Re <= 2000                                  (2)
 *             K = 4 St/(pi D^2 m d)                           pulses per m3                                      (3)
 *             m = 1 - (2/pi)(x sqrt(1 - x^2) + asin x), x = d/D     free area of a bar across a pipe             (4)
 * Symbols     Re = v d/nu of the body | D, d m pipe bore and body width | m free share of the section
 * Validity    (1), (2) circular cylinder; between 150 and 300 straight between the two; beyond 2000 the value at 2000 is held,
 *             which is within 0.015 of the 0.2 that holds to Re 2e5. `inside` is false outside 50 to 2000
 * Source      [roshko1954]; (3), (4) geometry                                Check  published/roshko1954.test.ts
 */
import { requirePositive, requireWithin } from "../../numerics/index.ts";

export type Strouhal = { readonly strouhal: number; readonly inside: boolean };

export function cylinderStrouhal(reynolds: number): Strouhal {
  requirePositive("Reynolds number", reynolds);
  const held = Math.min(2000, Math.max(50, reynolds));
  return { strouhal: strouhalWithin(held), inside: held === reynolds };
}

function strouhalWithin(reynolds: number): number {
  const slow = (re: number): number => 0.212 * (1 - 21.2 / re);
  const fast = (re: number): number => 0.212 * (1 - 12.7 / re);
  if (reynolds <= 150) return slow(reynolds);
  if (reynolds >= 300) return fast(reynolds);
  return slow(150) + ((fast(300) - slow(150)) * (reynolds - 150)) / 150;
}

/** (4); the short form 1 - 1.25 x of the trade is within 1 % of it up to x = 0.28. */
export function freeAreaShare(widthRatio: number): number {
  requireWithin("body width over bore", widthRatio, 0, 1);
  return 1 - (2 / Math.PI) * (widthRatio * Math.sqrt(1 - widthRatio ** 2) + Math.asin(widthRatio));
}

/** (3) */
export function vortexPulsesPerVolume(meter: {
  readonly strouhal: number;
  readonly bore: number;
  readonly bodyWidth: number;
  readonly freeArea: number;
}): number {
  requirePositive("bore", meter.bore);
  requirePositive("body width", meter.bodyWidth);
  requirePositive("free area", meter.freeArea);
  return (4 * meter.strouhal) / (Math.PI * meter.bore ** 2 * meter.freeArea * meter.bodyWidth);
}
