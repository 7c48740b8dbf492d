/**
 * The throttle as an orifice at every operating point, as far as its opening tells (plate-opening.ts).
 *
 * Equation    r = p/p_u,  p_u = barometer - drop (m/m_max)^2, or the pressure before the throttle where recorded     (1)
 *             d ln H/d ln p = r Psi'(r)/Psi(r), zero when choked, -9 at r = 0.95                                     (2)
 * Symbols     H kg/s air through the throttle
 * Validity    opening and manifold pressure recorded, r below 0.95; boosted only with the pressure before the throttle
 * Source      [heywood1988] App. C
 */
import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import { orificeFlowFunction, orificeFlowFunctionSlope } from "../gas/index.ts";
import { THROTTLE_USABLE_RATIO } from "../meters/index.ts";
import type { Assumptions } from "./assumptions.ts";
import { plateOpening } from "./plate-opening.ts";
import { find } from "./readings.ts";
import type { PointState, ThrottleState } from "./tally-model.ts";

export function throttleState(
  engine: EngineDescription,
  points: readonly OperatingPoint[],
  physics: PointState,
  a: Assumptions,
): ThrottleState | null {
  const plate = plateOpening(engine, points);
  if (plate === null) return null;
  const array = () => new Float64Array(points.length).fill(Number.NaN);
  const state = { upstream: array(), area: array(), openingEffect: array(), bypass: array(), pressureEffect: array() };
  points.forEach((point, i) => {
    const opened = plate.at(point);
    const upstream = upstreamPressure(engine, point, physics, i, a);
    const pressure = find(point, "manifoldPressure", null);
    if (opened === null || upstream === null || pressure === null || !(pressure.mean > 0)) return;
    const ratio = pressure.mean / upstream;
    if (ratio > THROTTLE_USABLE_RATIO) return;
    state.upstream[i] = upstream;
    state.area[i] = opened.area;
    state.openingEffect[i] = opened.openingEffect;
    state.bypass[i] = opened.bypass;
    state.pressureEffect[i] = (ratio * orificeFlowFunctionSlope(ratio)) / orificeFlowFunction(ratio);
  });
  return state.area.some((area) => area > 0) ? { ...state, bypassVaries: plate.bypassVaries } : null;
}

function upstreamPressure(
  engine: EngineDescription,
  point: OperatingPoint,
  physics: PointState,
  i: number,
  a: Assumptions,
): number | null {
  const recorded = find(point, "boostPressure", null);
  if (recorded !== null && recorded.mean > 0) return recorded.mean;
  if (engine.induction === "boosted") return null;
  return physics.barometer[i]! - a.ductDrop * Math.min(1, physics.air[i]! / physics.largestFlow) ** 2;
}
