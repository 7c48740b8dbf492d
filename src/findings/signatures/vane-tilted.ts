/**
 * A vane whose torque is not the spring's own: mounted at a tilt, spring tired or re-tensioned.
 *
 * Equation    dM = -1/2 ln(1 + e/s(x)),  x opening at the reading: of the wiper where recorded, else of the meter's curve at the flow,
 *             else ln(M/M_0)/ln(M_1/M_0)
 * Symbols     e torque error over the full spring torque, positive closes | s(x) spring torque over the full one (meters/vane) |
 *             M_0 a third of the idle flow, M_1 1.1 times the largest flow: common practice, no source
 * Limits      strongest nearly shut, where the spring is weakest; same sign throughout
 * Source      torque balance of meters/vane
 */
import type { EngineDescription } from "../../engine/index.ts";
import { DEFAULT_PRELOAD_SHARE, vaneTorqueErrorRatio } from "../../meters/index.ts";
import type { TallyModel } from "../../tally/index.ts";
import type { Law } from "../cause.ts";
import { ONE_SHAPE } from "../cause.ts";
import { signalsOf } from "./meter-signals.ts";
import { MOST_SHARE } from "./most-share.ts";
import { isMeter, ramp, shiftOf } from "./prediction.ts";

/** dM where the added torque would open the flap without flow */
const OPENED = 1.5;

export const vaneTilted: Law = {
  id: "vane-tilted",
  applies: ({ engine }) => engine.meters.some((m) => m.kind === "vane"),
  shapes: () => ONE_SHAPE,
  /** the flap still shuts */
  most: (_, sign) => (sign < 0 ? MOST_SHARE * DEFAULT_PRELOAD_SHARE : Infinity),
  predict: (model, torqueError) => {
    const vanes = new Set(model.engine.meters.filter((m) => m.kind === "vane").map((m) => m.id));
    const opening = openings(model, [...vanes][0]!);
    return shiftOf(
      model,
      (w) => isMeter(w) && vanes.has(w),
      (i) => {
        const ratio = vaneTorqueErrorRatio({ opening: opening(i), torqueError });
        return ratio === null ? OPENED : Math.log(ratio);
      },
    );
  },
};

function openings(model: TallyModel, id: EngineDescription["meters"][number]["id"]): (i: number) => number {
  const known = signalsOf(model, id);
  if (known !== null) {
    const { x } = known.curve;
    const [shut, open] = known.falling ? [x[x.length - 1]!, x[0]!] : [x[0]!, x[x.length - 1]!];
    return (i) => Math.min(1, Math.max(0, (known.signal[i]! - shut) / (open - shut)));
  }
  const { meter, idleFlow, largestFlow } = model.physics;
  const shut = Math.log(idleFlow / 3);
  const open = Math.log(1.1 * largestFlow);
  return (i) => ramp(Math.log(meter[id]![i]!), shut, open);
}
