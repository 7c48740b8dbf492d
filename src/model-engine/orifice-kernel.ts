/**
 * The orifice flow of gas/, tabulated with its slopes for the implicit time step.
 *
 * Equation    m = G p_u Psi(p_d/p_u), G = C A / sqrt(R T_u); dm/dp_d = G Psi', dm/dp_u = G (Psi - r Psi')
 * Numerics    Psi is smooth in s = sqrt(1 - r), so the table is uniform in s. Above r = 1 - 2e-4 (20 Pa at one bar) Psi is
 *             taken as linear in 1 - r, which keeps the slope finite and the flow odd in the pressure difference.
 *             Elsewhere the table is within 1e-6 of gas/ (tested). Above r = 0.85 the slope returned is at least 0.7 of the chord to
 *             r = 1: Newton's method on a root law jumps from side to side with the tangent (half the chord) and settles with more.
 * Source      gas/orifice-flow-function.ts                                   Check orifice-kernel.test.ts
 */
import { criticalPressureRatio, orificeFlowFunction } from "../gas/index.ts";

const LINEAR_BELOW = 2e-4;
const CHORD_BELOW = 0.15;
const CHORD_SHARE = 0.7;
const CELLS = 1024;
const CHOKED_AT = Math.sqrt(1 - criticalPressureRatio());
const STEP = CHOKED_AT / CELLS;
const PSI = Float64Array.from({ length: CELLS + 1 }, (_, i) => orificeFlowFunction(1 - (i * STEP) ** 2));
const PSI_CHOKED = PSI[CELLS]!;
const SLOPE_AT_ZERO = orificeFlowFunction(1 - LINEAR_BELOW) / LINEAR_BELOW;

/** Written by `orificeKernel`: the flow, and the slopes for the solver by the pressures of the first and the second side. */
export type KernelFlow = { flow: number; byFirst: number; bySecond: number };

/** Flow from side 1 to side 2 (negative the other way), with G of each direction. */
export function orificeKernel(
  out: KernelFlow,
  first: number,
  second: number,
  conductanceForward: number,
  conductanceBackward: number,
): void {
  if (first >= second) {
    forward(out, first, second, conductanceForward);
  } else {
    forward(out, second, first, conductanceBackward);
    const byUpstream = out.byFirst;
    out.flow = -out.flow;
    out.byFirst = -out.bySecond;
    out.bySecond = -byUpstream;
  }
}

function forward(out: KernelFlow, up: number, down: number, conductance: number): void {
  const lost = 1 - down / up;
  let psi: number;
  let slope: number; // by 1 - r
  if (lost < LINEAR_BELOW) {
    psi = SLOPE_AT_ZERO * lost;
    slope = SLOPE_AT_ZERO;
  } else {
    const s = Math.sqrt(lost);
    if (s >= CHOKED_AT) {
      psi = PSI_CHOKED;
      slope = 0;
    } else {
      const at = s / STEP;
      const i = Math.floor(at);
      const difference = PSI[i + 1]! - PSI[i]!;
      psi = PSI[i]! + (at - i) * difference;
      slope = difference / STEP / (2 * s);
      if (lost < CHORD_BELOW) slope = Math.max(slope, (CHORD_SHARE * psi) / lost);
    }
  }
  out.flow = conductance * up * psi;
  out.bySecond = -conductance * slope;
  out.byFirst = conductance * (psi + (1 - lost) * slope);
}
