/**
 * Orifice plate: discharge coefficient (Reader-Harris and Gallagher), expansibility, permanent loss, limits and uncertainty.
 *
 * Equation    C = 0.5961 + 0.0261 b^2 - 0.216 b^8 + 0.000521 (1e6 b/Re)^0.7 + (0.0188 + 0.0063 A) b^3.5 (1e6/Re)^0.3
 *               + (0.043 + 0.080 e^(-10 L1) - 0.123 e^(-7 L1)) (1 - 0.11 A) b^4/(1 - b^4)
 *               - 0.031 (M2 - 0.8 M2^1.1) b^1.3 + [0.011 (0.75 - b)(2.8 - D/25.4 mm) if D < 71.12 mm]              (1)
 *             A = (19000 b/Re)^0.8,  M2 = 2 L2/(1 - b)
 *             e = 1 - (0.351 + 0.256 b^4 + 0.93 b^8) (1 - (p2/p1)^(1/g))                                          (2)
 *             loss = dp (q - C b^2)/(q + C b^2),  q = sqrt(1 - b^4 (1 - C^2))                                     (3)
 * Symbols     b diameter ratio | Re pipe Reynolds number | L1, L2 distances of the taps over D | g isentropic exponent | D m
 * Validity    50 <= D <= 1000 mm, d >= 12.5 mm, 0.1 <= b <= 0.75, Re as in `orificeLimits`
 * Source      [iso5167-2] eqs. (4), (5), (7), 5.3.3 (limits and uncertainties from memory)      Check published/iso5167.test.ts
 */
import { requirePositive } from "../numerics/index.ts";
import type { DeviceGeometry } from "./device-geometry.ts";

export const ORIFICE_TAPS = ["corner", "flange", "D and D/2"] as const;
export type OrificeTaps = (typeof ORIFICE_TAPS)[number];

const INCH = 0.0254;

export function orificeDischargeCoefficient(
  at: DeviceGeometry & { readonly reynolds: number; readonly taps: OrificeTaps },
): number {
  const { diameterRatio: b, pipeDiameter, reynolds } = at;
  requirePositive("Reynolds number", reynolds);
  const { upstream: l1, downstream: l2 } = tapDistances(at.taps, pipeDiameter);
  const a = ((19_000 * b) / reynolds) ** 0.8;
  const m2 = (2 * l2) / (1 - b);
  const b4 = b ** 4;
  const small = pipeDiameter < 2.8 * INCH ? 0.011 * (0.75 - b) * (2.8 - pipeDiameter / INCH) : 0;
  return (
    0.5961 +
    0.0261 * b * b -
    0.216 * b4 * b4 +
    0.000521 * ((1e6 * b) / reynolds) ** 0.7 +
    (0.0188 + 0.0063 * a) * b ** 3.5 * (1e6 / reynolds) ** 0.3 +
    ((0.043 + 0.08 * Math.exp(-10 * l1) - 0.123 * Math.exp(-7 * l1)) * (1 - 0.11 * a) * b4) / (1 - b4) -
    0.031 * (m2 - 0.8 * m2 ** 1.1) * b ** 1.3 +
    small
  );
}

/** (2) */
export function orificeExpansibility(diameterRatio: number, pressureRatio: number, gamma: number): number {
  const b4 = diameterRatio ** 4;
  return 1 + (0.351 + 0.256 * b4 + 0.93 * b4 * b4) * Math.expm1(Math.log(pressureRatio) / gamma);
}

/** (3), Pa */
export function orificePermanentLoss(pressureDrop: number, diameterRatio: number, coefficient: number): number {
  const b4 = diameterRatio ** 4;
  const q = Math.sqrt(1 - b4 * (1 - coefficient ** 2));
  const cb2 = coefficient * diameterRatio ** 2;
  return (pressureDrop * (q - cb2)) / (q + cb2);
}

/** Limits of the standard that are broken, in words. */
export function orificeLimits(geometry: DeviceGeometry, reynolds: number, taps: OrificeTaps): string[] {
  const { pipeDiameter: d, diameterRatio: b } = geometry;
  const broken: string[] = [];
  if (d < 0.05 || d > 1) broken.push(`pipe ${(d * 1000).toPrecision(3)} mm outside 50 to 1000 mm`);
  if (b * d < 0.0125) broken.push(`bore ${(b * d * 1000).toPrecision(3)} mm below 12.5 mm`);
  if (b < 0.1 || b > 0.75) broken.push(`diameter ratio ${b.toPrecision(3)} outside 0.1 to 0.75`);
  const least = taps === "flange" ? Math.max(5000, 170 * b * b * d * 1000) : b > 0.56 ? 16_000 * b * b : 5000;
  if (reynolds < least) broken.push(`Reynolds number ${reynolds.toPrecision(3)} below ${least.toPrecision(3)}`);
  return broken;
}

/** Relative, 95 %: of C by 5.3.3.1 of the standard. */
export function orificeUncertainty(geometry: DeviceGeometry, reynolds: number): number {
  const { pipeDiameter, diameterRatio: b } = geometry;
  const base = b < 0.2 ? 0.7 - b : b <= 0.6 ? 0.5 : 1.667 * b - 0.5;
  const small = pipeDiameter < 2.8 * INCH ? 0.9 * (0.75 - b) * (2.8 - pipeDiameter / INCH) : 0;
  const slow = b > 0.5 && reynolds < 10_000 ? 0.5 : 0;
  return (base + small + slow) / 100;
}

function tapDistances(taps: OrificeTaps, pipeDiameter: number): { upstream: number; downstream: number } {
  if (taps === "corner") return { upstream: 0, downstream: 0 };
  if (taps === "flange") return { upstream: INCH / pipeDiameter, downstream: INCH / pipeDiameter };
  return { upstream: 1, downstream: 0.47 };
}
