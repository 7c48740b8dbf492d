/**
 * What a tilted mounting, or a tired spring, does to the mass a vane meter reads.
 *
 * Equation    reading/truth = 1/sqrt(1 + e/s(x)),   s(x) = s_0 + (1 - s_0) x                                      (1)
 * Symbols     e torque added, over the full spring torque (size of the cause vane-tilted), positive when it closes the flap |
 *             x = 0..1 flap angle over its range | s spring torque over the full one, s_0 preload share
 * Validity    e > -s(x): below, the flap opens without flow and the result is null
 * Assumes     the added torque does not change with the angle: a tilt does by its sine, which vane-law.ts has in full
 * Source      torque balance of vane-law.ts eq. (2) at the same angle; s_0 is common practice, no source (0.2 to 0.4)
 * Check       against vane-law.ts in vane.props.test.ts
 */
import { requireWithin } from "../../numerics/index.ts";

export const DEFAULT_PRELOAD_SHARE = 0.3;

export function vaneTorqueErrorRatio(at: {
  readonly opening: number;
  readonly torqueError: number;
  readonly preloadShare?: number;
}): number | null {
  const { opening, torqueError, preloadShare = DEFAULT_PRELOAD_SHARE } = at;
  requireWithin("opening", opening, 0, 1);
  requireWithin("preload share", preloadShare, 0, 1);
  const spring = preloadShare + (1 - preloadShare) * opening;
  const share = 1 + torqueError / spring;
  return share > 0 ? 1 / Math.sqrt(share) : null;
}
