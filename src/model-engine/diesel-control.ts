/**
 * A diesel's own part of the engine computer: dose by the foot up to the smoke limit of the metered air, and an EGR valve that
 * holds the metered air at its set-point. Maps and rates are common practice, no source.
 */

import type { Demand } from "./driver.ts";
import type { ComputerState, Sensors } from "./engine-computer.ts";
import type { PreparedEngine } from "./prepared-engine.ts";
import { lookUp } from "./uniform-table.ts";

const SMOKE_LIMIT = 1.25; // lambda

/** Dose of full load, kg a cycle: lambda 1.35 at the largest boost. */
export function fullDose(e: PreparedEngine): number {
  const boost = e.design.charger?.largestRatio ?? 1;
  const air = (0.88 * 101e3 * boost * e.design.displacement) / (e.air.gasConstant * 325);
  return air / (e.ratioAssumed * 1.35);
}

export function stepDiesel(
  e: PreparedEngine,
  state: ComputerState,
  sensors: Sensors,
  demand: Demand,
  idleDose: number,
  dt: number,
): void {
  const speed = sensors.speed;
  const wanted = demand.load === null ? (demand.mode === "free" ? idleDose : 0) : demand.load * fullDose(e);
  const smoke = (state.airDosedBy * 2) / Math.max(speed, 3) / (e.ratioAssumed * SMOKE_LIMIT);
  const dose = speed < 8 ? wanted : Math.min(wanted, smoke);
  state.fuelCut = demand.mode !== "off" && dose === 0;
  state.loop = 1;
  state.lambdaCommanded = 1;
  state.doses.fill(speed < 3 ? 0 : (dose * speed) / 2 / state.doses.length);

  const share = egrShare(speed, dose / fullDose(e), state.fuelCut, sensors.coolant);
  const unrecirculated =
    (lookUp(e.breathing.drawn, speed) * sensors.pressure * e.design.displacement * speed) /
    (2 * e.air.gasConstant * 325);
  const setPoint = (1 - share) * unrecirculated;
  if (share < 0.03 || speed < 8) state.egrOpening = Math.max(0, state.egrOpening - 3 * dt);
  else {
    const error = state.meterAir / Math.max(setPoint, 1e-4) - 1; // too much fresh air: open
    state.egrOpening = Math.min(Math.max(state.egrOpening + 0.8 * Math.max(-0.5, Math.min(0.5, error)) * dt, 0), 1);
  }
}

/** Share of the fresh air replaced by exhaust: most at idle and low load, none at high load, high speed, cold or fuel cut. */
function egrShare(speed: number, load: number, fuelCut: boolean, coolant: number): number {
  if (fuelCut || coolant < 320) return 0;
  const byLoad = Math.min(1, Math.max(0, (0.62 - load) / 0.3));
  const bySpeed = Math.min(1, Math.max(0, (48 - speed) / 12));
  return 0.42 * byLoad * bySpeed;
}
