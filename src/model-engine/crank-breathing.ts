/**
 * What the crank-angle engine breathes, in the words of the cycle-averaged one: its efficiency table for a drawing.
 *
 * Equation    eta_0(N) = m 2 R T_a/(p V N F),  F = 1 - k (p_e/p - 1)/(g (r - 1)),  wide open                         (1)
 * Symbols     as in breathing.ts; T_a of the air drawn in: what residual gas heats in the ports is in k, not in T
 * Validity    naturally aspirated, speeds from 10 to 110 1/s
 * Source      breathing.ts                    Check crank-engine.test.ts: both engines, idle to full load
 */
import { GAMMA_CHARGE } from "../engine/index.ts";
import { GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";
import { AMBIENT, crankResistances, crankSettings, runCrankCycle } from "./crank-cycle.ts";
import { newCrankEngine } from "./crank-engine.ts";
import type { EngineDesign } from "./engine-design.ts";
import { fullArea } from "./throttle-plate.ts";

const SETTLING = 30; // cycles

export function crankBreathing(design: EngineDesign, speeds: readonly number[], intakeLate = 0) {
  return speeds.map((speed) => [speed, efficiencyAtFullLoad(design, speed, intakeLate)] as const);
}

function efficiencyAtFullLoad(design: EngineDesign, speed: number, intakeLate: number): number {
  const largest = (0.45 * design.displacement * design.largestSpeed * AMBIENT.pressure) / (GAS_CONSTANT_DRY_AIR * 300);
  const engine = newCrankEngine(design, AMBIENT, crankResistances(design, largest), 0.98 * AMBIENT.pressure);
  const settings = { ...crankSettings(design, speed, fullArea(design.intake.throttleBore)), intakeLate };
  for (let i = 0; i < SETTLING; i++) runCrankCycle(engine, settings);
  const { cylinderFlow, manifoldPressure, exhaustPressure } = runCrankCycle(engine, settings);
  const displaced = (manifoldPressure * design.displacement * speed) / (2 * GAS_CONSTANT_DRY_AIR * AMBIENT.temperature);
  const residual = design.residualStrength / (GAMMA_CHARGE * (design.compressionRatio - 1));
  return cylinderFlow / displaced / (1 - residual * (exhaustPressure / manifoldPressure - 1));
}
