/**
 * Volume of a cylinder by crank angle, and the effective areas of its valves.
 *
 * Equation    V = V_c + (V_h/2)(l + 1 - cos t - sqrt(l^2 - sin^2 t)),  V_c = V_h/(r - 1)                           (1)
 *             A_w = pi b^2/2 + 4 (V - V_c)/b                       walls that the gas touches                   (2)
 *             A_valve = A_max sin^2(pi (t - t_open)/(t_close - t_open)) while open                              (3)
 * Symbols     t rad from firing dead centre | V_h m3 swept | r compression ratio | l rod over crank radius, 3.5 | b m bore = stroke
 * Validity    all angles, taken modulo two turns
 * Source      (1) [heywood1988] eq. (2.6); (3), l, square bore and areas common practice, no source
 * Check       crank-geometry.test.ts
 */
import type { EngineDesign } from "./engine-design.ts";

export type CrankGeometry = {
  readonly swept: number;
  readonly clearance: number;
  readonly bore: number;
  /** m2 effective, fully open */
  readonly intakeArea: number;
  readonly exhaustArea: number;
};

/** Degrees after firing dead centre, of 720. [common practice, no source] */
export const VALVE_TIMING = { exhaustOpens: 130, exhaustCloses: 374, intakeOpens: 348, intakeCloses: 588 } as const;

const ROD_RATIO = 3.5;
const INTAKE_SHARE = 0.18; // of the bore's area, discharge included
const EXHAUST_SHARE = 0.15;

export function crankGeometry(design: EngineDesign): CrankGeometry {
  const swept = design.displacement / design.cylinders;
  const bore = ((4 * swept) / Math.PI) ** (1 / 3);
  const piston = (Math.PI / 4) * bore * bore;
  return {
    swept,
    clearance: swept / (design.compressionRatio - 1),
    bore,
    intakeArea: INTAKE_SHARE * piston,
    exhaustArea: EXHAUST_SHARE * piston,
  };
}

export function cylinderVolume(g: CrankGeometry, degrees: number): number {
  const t = (degrees * Math.PI) / 180;
  const sine = Math.sin(t);
  return g.clearance + (g.swept / 2) * (ROD_RATIO + 1 - Math.cos(t) - Math.sqrt(ROD_RATIO ** 2 - sine * sine));
}

export function wallArea(g: CrankGeometry, volume: number): number {
  return (Math.PI * g.bore * g.bore) / 2 + (4 * (volume - g.clearance)) / g.bore;
}

/** (3): share of the full area. */
export function valveShare(degrees: number, opens: number, closes: number): number {
  const into = (((degrees - opens) % 720) + 720) % 720;
  const open = closes - opens;
  return into >= open ? 0 : Math.sin((Math.PI * into) / open) ** 2;
}
