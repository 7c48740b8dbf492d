/**
 * The throttle as an orifice at every operating point, as far as its opening tells.
 *
 * Equation    x = (reading - closed)/(open - closed),  A = C A_plate(x) + A_b                                     (1)
 *             r = p/p_u,  p_u = barometer - drop (m/m_max)^2, or the pressure before the throttle where recorded     (2)
 *             d ln H/d ln p = r Psi'(r)/Psi(r), zero when choked, -9 at r = 0.95                                     (3)
 * Symbols     closed: lowest reading of the job less 0.02, 0.16 at most; open 0.85 or the highest reading | C 0.85 | A_b m2 idle
 *             bypass and leakage | H kg/s air through the throttle
 * Validity    spark ignition, opening and manifold pressure recorded, r below 0.95; boosted only with the pressure before the
 *             throttle. The scale of the opening is not known to better than that: stop, bypass and curve are unknowns
 * Source      [heywood1988] App. C; readings of 10 to 18 % when closed and the coefficients: common practice, no source
 */
import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import { orificeFlowFunction, orificeFlowFunctionSlope } from "../gas/index.ts";
import { THROTTLE_USABLE_RATIO, throttleArea } from "../meters/index.ts";
import type { Assumptions } from "./assumptions.ts";
import { find } from "./readings.ts";
import type { PointState, ThrottleState } from "./tally-model.ts";

const CLOSED_AT_MOST = 0.16;
const BELOW_LOWEST = 0.02;
const OPEN_AT_LEAST = 0.85;
/** a "throttle" that never comes near its stop in a job with idle is no opening */
const LOWEST_AT_MOST = 0.35;
const DISCHARGE = 0.85;
/** rad from across the bore */
const CLOSED_ANGLE = (7 * Math.PI) / 180;
/** m and m3: a usual bore for a usual engine, where none is stated */
const USUAL_BORE = 0.06;
const USUAL_DISPLACEMENT = 2e-3;
/** m2 for 2 L: leakage past the plate alone, and with an idle valve half open */
const LEAKAGE = 1.5e-6;
const IDLE_VALVE = 10e-6;

export function throttleState(
  engine: EngineDescription,
  points: readonly OperatingPoint[],
  physics: PointState,
  a: Assumptions,
): ThrottleState | null {
  if (engine.ignition !== "spark") return null;
  const openings = points.map(openingOf);
  const known = openings.flatMap((o) => (o === null ? [] : [o.mean]));
  const lowest = Math.min(...known);
  if (known.length === 0 || lowest > LOWEST_AT_MOST) return null;
  const closed = Math.min(Math.max(lowest - BELOW_LOWEST, 0), CLOSED_AT_MOST);
  const travel = Math.max(OPEN_AT_LEAST, ...known) - closed;
  const scale = engine.displacement / USUAL_DISPLACEMENT;
  const bore = engine.throttleBore ?? USUAL_BORE * Math.sqrt(scale);
  const plate = { bore, shaft: 0, closedAngle: CLOSED_ANGLE };
  const angle = (reading: number) =>
    CLOSED_ANGLE + Math.min(1, Math.max(0, (reading - closed) / travel)) * (Math.PI / 2 - CLOSED_ANGLE);
  const bypassVaries = !points.some((p) => has(p, "pedalPosition") || has(p, "throttleCommanded") || has(p, "idleAir"));
  const array = () => new Float64Array(points.length).fill(Number.NaN);
  const state = { upstream: array(), area: array(), openingEffect: array(), bypass: array(), pressureEffect: array() };
  points.forEach((point, i) => {
    const opening = openings[i] ?? null;
    const upstream = upstreamPressure(engine, point, physics, i, a);
    const pressure = find(point, "manifoldPressure", null);
    if (opening === null || upstream === null || pressure === null || !(pressure.mean > 0)) return;
    const ratio = pressure.mean / upstream;
    if (ratio > THROTTLE_USABLE_RATIO) return;
    const valve = find(point, "idleAir", null);
    const bypass = scale * (LEAKAGE + (valve !== null ? 2 * valve.mean * IDLE_VALVE : bypassVaries ? IDLE_VALVE : 0));
    const area = DISCHARGE * throttleArea(plate, angle(opening.mean)) + bypass;
    const step = 0.002;
    const wider = DISCHARGE * throttleArea(plate, angle(opening.mean + step)) + bypass;
    state.upstream[i] = upstream;
    state.area[i] = area;
    state.openingEffect[i] = Math.log(wider / area) / step;
    state.bypass[i] = bypass / area;
    state.pressureEffect[i] = (ratio * orificeFlowFunctionSlope(ratio)) / orificeFlowFunction(ratio);
  });
  return state.area.some((area) => area > 0) ? { ...state, bypassVaries } : null;
}

export function openingOf(point: OperatingPoint) {
  return find(point, "throttlePosition", null) ?? find(point, "throttleRelative", null);
}

function has(point: OperatingPoint, quantity: "pedalPosition" | "throttleCommanded" | "idleAir"): boolean {
  return find(point, quantity, null) !== null;
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
