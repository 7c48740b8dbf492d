/**
 * What the throttle witness makes of pressures that are not as it takes them.
 *
 * Equation    dH = ln( p_u' Psi(p'/p_u') / (p_u Psi(p/p_u)) ), ' as the witness takes them
 * Symbols     p manifold, p_u before the throttle, Pa
 * Numerics    the whole difference and no slope: towards p_u the slope at the reading is half or twice of it. A true p/p_u counts
 *             as 0.99 at most, as an open plate leaves it (common practice, no source)
 * Source      [heywood1988] App. C
 */
import { orificeFlowFunction } from "../../gas/index.ts";
import { findReading, type TallyModel } from "../../tally/index.ts";

const OPEN_PLATE = 0.99;

/** dH where the manifold truly stands at `pressure`; 0 where the witness is not heard */
export function throttleByPressure({ physics }: TallyModel, i: number, pressure: number): number {
  const upstream = physics.throttle?.upstream[i] ?? Number.NaN;
  return upstream > 0 ? logFlow(physics.pressure[i]!, upstream) - logFlow(pressure, upstream) : 0;
}

/** dH where there is truly `less` before the throttle than the barometer lets expect; 0 where that pressure was read itself */
export function throttleByUpstream({ physics, points }: TallyModel, i: number, less: number): number {
  const upstream = physics.throttle?.upstream[i] ?? Number.NaN;
  if (!(upstream > 0) || findReading(points[i]!, "boostPressure", null) !== null) return 0;
  const pressure = physics.pressure[i]!;
  const truth = Math.max(upstream - less, pressure / OPEN_PLATE);
  return logFlow(pressure, upstream) - logFlow(pressure, truth);
}

function logFlow(pressure: number, upstream: number): number {
  return Math.log(upstream * orificeFlowFunction(Math.min(OPEN_PLATE, pressure / upstream)));
}
