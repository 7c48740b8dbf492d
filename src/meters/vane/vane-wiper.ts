/**
 * The wiper of a vane meter: voltage over reference, rising or falling with the flap, and back.
 *
 * Equation    ratio = r_0 + (r_1 - r_0) a/a_max                                                                 (1)
 * Symbols     ratio 1 (voltage over reference, so that the supply cancels) | r_0 closed, r_1 fully open | a rad
 * Validity    0 <= ratio <= 1 (asserted); outside r_0..r_1 the nearer end with `inside` false
 * Source      definition; tracks that fall with flow and tracks that rise both exist: common practice, no source
 */
import { requireWithin } from "../../numerics/index.ts";

export type WiperTrack = {
  readonly closedRatio: number;
  readonly openRatio: number;
  readonly maximumAngle: number;
};

export function wiperRatio(track: WiperTrack, angle: number): number {
  requireWithin("flap angle", angle, 0, track.maximumAngle);
  return track.closedRatio + ((track.openRatio - track.closedRatio) * angle) / track.maximumAngle;
}

export function wiperAngle(track: WiperTrack, ratio: number): { readonly angle: number; readonly inside: boolean } {
  requireWithin("wiper ratio", ratio, 0, 1);
  const share = (ratio - track.closedRatio) / (track.openRatio - track.closedRatio);
  const held = Math.min(1, Math.max(0, share));
  return { angle: held * track.maximumAngle, inside: held === share };
}

/** Ratio from a recorded voltage: the ground offset is taken off both, so a common ground shift cancels only where it is measured. */
export function wiperRatioOfVoltage(reading: {
  readonly voltage: number;
  readonly reference: number;
  readonly groundOffset?: number;
}): number {
  const { voltage, reference, groundOffset = 0 } = reading;
  return (voltage - groundOffset) / (reference - groundOffset);
}
