/**
 * Effective area of a throttle plate against its opening, and back.
 *
 * Equation    A = C (pi D^2/4)(1 - cos(a)/cos(a_0)),  a = a_0 + x (90 deg - a_0)
 * Symbols     A m2 effective | D m bore | a plate angle, a_0 closed (6 deg) | x opening, 0 to 1 | C 0.85
 * Validity    0 <= x <= 1 (clipped); shaft neglected
 * Source      [heywood1988] eq. (7.18) without the shaft terms; C common practice, no source      Check throttle-plate.test.ts
 */
const CLOSED = (6 * Math.PI) / 180;
const DISCHARGE = 0.85;

export function throttleArea(bore: number, opening: number): number {
  const x = Math.min(Math.max(opening, 0), 1);
  return fullArea(bore) * (1 - Math.cos(CLOSED + x * (Math.PI / 2 - CLOSED)) / Math.cos(CLOSED));
}

export function throttleOpening(bore: number, area: number): number {
  const share = Math.min(Math.max(area / fullArea(bore), 0), 1);
  return (Math.acos((1 - share) * Math.cos(CLOSED)) - CLOSED) / (Math.PI / 2 - CLOSED);
}

/** m2 effective with the plate in line with the stream */
export function fullArea(bore: number): number {
  return DISCHARGE * (Math.PI / 4) * bore * bore;
}
