/** Which parts of the standard recording the operating points of this job hold, as far as steady running tells it. */
import type { TallyModel } from "../tally/index.ts";

export type VisitedPart =
  | "warm-idle"
  | "idle-with-loads"
  | "light-load"
  | "full-load"
  | "low-speed-wide-open"
  | "overrun";

/** air at idle must differ by this much between loads off and on; common practice, no source */
const LOADED_IDLE = 1.15;

const TESTS: { readonly [part in VisitedPart]: (model: TallyModel) => boolean } = {
  "warm-idle": (model) => model.points.some((p) => p.states.includes("idle")),
  "idle-with-loads": (model) => {
    const idle = model.points.flatMap((p, i) => (p.states.includes("idle") ? [model.physics.air[i]!] : []));
    return idle.length > 1 && Math.max(...idle) > LOADED_IDLE * Math.min(...idle);
  },
  "light-load": ({ points, physics }) =>
    points.some(
      (_, i) => physics.speed[i]! > 32 && physics.speed[i]! < 52 && physics.pressure[i]! < 0.65 * physics.barometer[i]!,
    ),
  "full-load": (model) => model.points.some((p, i) => p.states.includes("full-load") || fullLoadByPressure(model, i)),
  "low-speed-wide-open": ({ points, physics }) =>
    points.some((_, i) => physics.speed[i]! < 35 && physics.pressure[i]! > 0.85 * physics.barometer[i]!),
  overrun: (model) => model.points.some((p) => p.states.includes("fuel-cut")),
};

export function visitedParts(model: TallyModel): ReadonlySet<VisitedPart> {
  const parts = Object.keys(TESTS) as VisitedPart[];
  return new Set(parts.filter((part) => TESTS[part](model)));
}

function fullLoadByPressure({ engine, physics }: TallyModel, i: number): boolean {
  const boosted = engine.induction === "boosted" || engine.ignition === "compression";
  const enough = boosted ? 1.7 : 0.92;
  return physics.pressure[i]! > enough * physics.barometer[i]! && physics.air[i]! > 0.6 * physics.largestFlow;
}
