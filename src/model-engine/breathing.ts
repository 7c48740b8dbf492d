/**
 * How much the cylinders of the model engine draw.
 *
 * Equation    m = eta p V N/(2 R T),  eta = eta_0(N) exp(d(N, p)) F c                                                (1)
 *             F = 1 - k (p_e/p - 1)/(g (r - 1))                                                                (2)
 *             c = 1 + b min((m/m_max)^2, 1.5)                                                                  (3)
 * Symbols     m kg/s of everything drawn | p, T in the manifold | p_e exhaust pressure | V displacement | N 1/s |
 *             eta_0 as drawn | d scale and shape of this engine | F residual gas of the ideal cycle with strength k |
 *             g GAMMA_CHARGE | r compression ratio | b planted change at the largest flow m_max
 * Validity    N >= 0, p > 0; F is not below zero: cylinders that expand residual gas alone draw nothing
 * Source      (2) engine/residual-gas.ts [heywood1988] eq. (6.2); (3) common practice, no source        Check breathing.test.ts
 */
import { GAMMA_CHARGE } from "../engine/index.ts";
import type { EngineDesign } from "./engine-design.ts";
import type { EngineParts } from "./engine-parts.ts";
import { variationAt } from "./smooth-variation.ts";
import { lookUp, lookUp2, type Table1, type Table2, tabulate, tabulate2 } from "./uniform-table.ts";

export type Breathing = {
  /** as drawn, over speed: what the engine computer knows */
  readonly drawn: Table1;
  /** exp(d) over speed and pressure */
  readonly deviation: Table2;
  /** k/(g (r - 1)) of this engine, and of the drawing */
  readonly residual: number;
  readonly residualDrawn: number;
};

export function breathingOf(design: EngineDesign, parts: EngineParts): Breathing {
  const top = design.largestSpeed * 1.1;
  const residualDrawn = design.residualStrength / (GAMMA_CHARGE * (design.compressionRatio - 1));
  return {
    drawn: tabulate({ low: 0, high: top, cells: 128 }, (speed) => between(design.breathing, speed)),
    deviation: tabulate2({ low: 0, high: top, cells: 24 }, { low: 0, high: 320e3, cells: 48 }, (speed, pressure) =>
      Math.exp(parts.breathingScale + variationAt(parts.breathingShape, speed, pressure)),
    ),
    residual: parts.residualStrength * residualDrawn,
    residualDrawn,
  };
}

/** eta_0 exp(d): the efficiency where exhaust and manifold pressure are equal. */
export function efficiencyAt(breathing: Breathing, speed: number, pressure: number): number {
  return lookUp(breathing.drawn, speed) * lookUp2(breathing.deviation, speed, pressure);
}

/** eta as the engine computer has it: the drawing, with the drawing's residual gas. */
export function efficiencyDrawn(breathing: Breathing, speed: number, pressure: number, exhaust: number): number {
  return lookUp(breathing.drawn, speed) * Math.max(0, 1 - breathing.residualDrawn * (exhaust / pressure - 1));
}

/** Linear between points, flat outside. */
function between(points: readonly (readonly [number, number])[], x: number): number {
  const above = points.findIndex(([px]) => px > x);
  if (above === 0) return points[0]![1];
  if (above === -1) return points[points.length - 1]![1];
  const [x0, y0] = points[above - 1]!;
  const [x1, y1] = points[above]!;
  return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
}
