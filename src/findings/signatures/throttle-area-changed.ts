/**
 * A throttle that lets through another area than its angle says: deposits, a stop that was moved, a plate fitted askew.
 *
 * Equation    A = A_assumed(angle) + d,  dH = -ln(A/A_assumed) = ln(1 - d/A),  A = m sqrt(R T)/(p_u Psi(p/p_u))
 * Symbols     A m2 effective, from the air that passes | d m2 change, the same at every angle | H throttle witness | p_u Pa before the throttle
 * Limits      strongest near the stop; fades as the plate opens. Moves no meter, pressure or trim; without a throttle witness unseen
 * Source      [heywood1988] App. C; that the change is one area at every angle is common practice, no source
 */
import { orificeFlowFunction } from "../../gas/index.ts";
import { GAS_CONSTANT_DRY_AIR } from "../../quantities/index.ts";
import type { TallyModel } from "../../tally/index.ts";
import { type Law, ONE_SHAPE } from "../cause.ts";
import { least, MOST_SHARE } from "./most-share.ts";
import { isThrottle, shiftOf } from "./prediction.ts";

/** nearer to ambient the flow function is too small to say an area by */
const HIGHEST_RATIO = 0.95;
/** of the area that passes the air: more can't be deposits gone */
const MOST = 0.95;

export const throttleAreaChanged: Law = {
  id: "throttle-area-changed",
  applies: (model) => model.engine.ignition === "spark",
  shapes: () => ONE_SHAPE,
  /** some of the area was there before */
  most: (model, sign) => (sign > 0 ? MOST_SHARE * least(model.points.map((_, i) => areaAt(model, i))) : Infinity),
  predict: (model, change) => shiftOf(model, isThrottle, (i) => Math.log1p(-Math.min(MOST, change / areaAt(model, i)))),
};

/** m2 effective that passes the air of a point */
function areaAt({ physics }: TallyModel, i: number): number {
  const recorded = physics.throttle?.upstream[i] ?? Number.NaN;
  const upstream = recorded > 0 ? recorded : physics.barometer[i]!;
  const ratio = Math.min(HIGHEST_RATIO, physics.pressure[i]! / upstream);
  const sound = Math.sqrt(GAS_CONSTANT_DRY_AIR * physics.intakeTemperature[i]!);
  return (physics.air[i]! * sound) / (upstream * orificeFlowFunction(ratio));
}
