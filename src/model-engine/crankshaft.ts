/**
 * Torque of the running engine, for idle and no-load running where speed is its own master.
 *
 * Equation    T = H eta b/(2 pi N) - f V/(4 pi) - (p_e - p) V/(4 pi) - T_accessories                              (1)
 *             f = 0.97e5 + 0.15e5 n + 0.05e5 n^2, n = N/(1000 rev/min)                                           (2)
 * Symbols     b kg/s of fuel that finds air | H J/kg heating value | eta indicated efficiency | f Pa friction mean pressure |
 *             V m3 displacement | p_e, p Pa exhaust and manifold | N 1/s | T N m
 * Validity    N > 0
 * Source      (1) definition; (2) [heywood1988] eq. (13.6), spark ignition, from memory; eta common practice, no source
 */
import type { EngineDesign } from "./engine-design.ts";

const HEATING_VALUE = 43e6;

export function netTorque(
  design: EngineDesign,
  running: {
    readonly speed: number;
    readonly fuel: number;
    readonly air: number;
    readonly stoichiometricRatio: number;
    readonly pressure: number;
    readonly exhaustPressure: number;
    readonly accessoryTorque: number;
    /** 1 = best timing */
    readonly sparkShare: number;
  },
): number {
  const burnt = Math.min(running.fuel, running.air / running.stoichiometricRatio);
  const efficiency = (design.ignition === "spark" ? 0.32 : 0.4) * running.sparkShare;
  const indicated = (HEATING_VALUE * efficiency * burnt) / (2 * Math.PI * Math.max(running.speed, 2));
  const n = (running.speed * 60) / 1000;
  const friction = 0.97e5 + 0.15e5 * n + 0.05e5 * n * n;
  const pumping = running.exhaustPressure - running.pressure;
  return indicated - ((friction + pumping) * design.displacement) / (4 * Math.PI) - running.accessoryTorque;
}
