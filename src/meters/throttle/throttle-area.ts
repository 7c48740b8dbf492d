/**
 * Open area of a butterfly throttle, with its shaft.
 *
 * Equation    A/(pi D^2/4) = 1 - k + (2/pi) [ a sqrt(1 - (a/k)^2) + k asin(a/k) - a sqrt(1 - a^2) - asin a ],  k = cos f/cos f_0   (1)
 *             constant from k = a on, where the plate hides behind its shaft
 * Symbols     D m bore | d m shaft, a = d/D | f rad plate angle from across the bore | f_0 rad its closed angle
 * Validity    0 <= f_0 < f <= pi/2, 0 <= a < 1 (asserted); below f_0 zero: leakage and idle bypass are added by throttle-flow.ts
 * Source      circle less the union of the plate's ellipse and the shaft's strip, derived here; [heywood1988] eq. (7.18) has the same terms
 *             (remembered with two signs that do not give the bore less the strip when open)
 * Check       limits in throttle.props.test.ts
 */
import { findRoot, requirePositive, requireWithin } from "../../numerics/index.ts";

export type ThrottlePlate = {
  readonly bore: number;
  readonly shaft: number;
  readonly closedAngle: number;
};

/** m2 */
export function throttleArea(plate: ThrottlePlate, angle: number): number {
  requirePositive("throttle bore", plate.bore);
  requireWithin("plate angle", angle, 0, Math.PI / 2);
  return ((Math.PI * plate.bore ** 2) / 4) * openShare(plate, angle);
}

/** The inverse; null beyond the fully open area. */
export function throttleAngle(plate: ThrottlePlate, area: number): number | null {
  requireWithin("area", area, 0, Number.MAX_VALUE);
  if (area === 0) return plate.closedAngle;
  const outcome = findRoot((angle) => throttleArea(plate, angle) - area, {
    low: plate.closedAngle,
    high: openAngle(plate),
  });
  return outcome.status === "found" ? outcome.root : null;
}

function openShare(plate: ThrottlePlate, angle: number): number {
  const a = plate.shaft / plate.bore;
  requireWithin("shaft over bore", a, 0, 0.9);
  requireWithin("closed angle", plate.closedAngle, 0, 1.2);
  if (angle <= plate.closedAngle) return 0;
  const cosClosed = Math.cos(plate.closedAngle);
  // From here on the plate hides behind its shaft and the area stays.
  const k = Math.max(Math.cos(angle) / cosClosed, a);
  if (a === 0) return 1 - k;
  const hidden = a / k;
  const plateStrip = a * Math.sqrt(1 - hidden * hidden) + k * Math.asin(hidden);
  const boreStrip = a * Math.sqrt(1 - a * a) + Math.asin(a);
  return 1 - k + (2 / Math.PI) * (plateStrip - boreStrip);
}

/** Angle from which the plate hides behind its shaft. */
function openAngle(plate: ThrottlePlate): number {
  return Math.acos((plate.shaft / plate.bore) * Math.cos(plate.closedAngle));
}
