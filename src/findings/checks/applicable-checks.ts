/** The checks worth proposing on this job: the engine has the part, and the recording has not shown it already. */
import type { TallyModel } from "../../tally/index.ts";
import { hasFuelControl, hasMeter, hasPressureSensor } from "../signatures/prediction.ts";
import { visitedParts } from "../visited-parts.ts";
import type { CheckEntry, Need } from "./check-entry.ts";
import { CHECKS } from "./check-table.ts";
import type { FoundResult } from "./found-result.ts";

const MET: { readonly [need in Need]: (model: TallyModel) => boolean } = {
  meter: hasMeter,
  element: (model) =>
    hasMeter(model) && model.engine.meters.every(({ kind }) => kind === "hot-wire" || kind === "hot-film"),
  "doses-by-meter": ({ engine }) => engine.metering === "meter" || engine.metering === "both",
  "pressure-sensor": hasPressureSensor,
  throttle: ({ engine }) => engine.ignition === "spark",
  boosted: ({ engine }) =>
    engine.induction === "boosted" || (engine.ignition === "compression" && engine.induction === null),
  spark: ({ engine }) => engine.ignition === "spark",
  "fuel-control": hasFuelControl,
  "lambda-probe": ({ engine }) => engine.ignition === "spark" && engine.lambdaProbe !== "none",
  "regulator-at-manifold": ({ engine }) =>
    engine.ignition === "spark" && engine.injection !== "direct" && engine.injectors?.pressureReference !== "ambient",
  "liquid-spark-fuel": ({ engine }) => engine.ignition === "spark" && engine.fuel !== "lpg" && engine.fuel !== "cng",
  egr: ({ engine }) => engine.egr !== "none",
  "key-on-not-recorded": ({ standing }) => !standing.some((s) => s.kind === "pressure-against-barometer"),
  "full-load-not-recorded": (model) => !visitedParts(model).has("full-load"),
  "parts-not-recorded": (model) => {
    const seen = visitedParts(model);
    return (["warm-idle", "light-load", "full-load"] as const).filter((part) => !seen.has(part)).length > 1;
  },
};

export function applicableChecks(model: TallyModel, found: readonly FoundResult[]): CheckEntry[] {
  return CHECKS.filter((check) => !isMade(check.id, found) && check.applies.every((need) => MET[need](model)));
}

/** Made on one bank of two, it is still open on the other. */
function isMade(check: string, found: readonly FoundResult[]): boolean {
  const own = found.filter((result) => result.check === check);
  return own.some((result) => result.bank === null) || own.length === 2;
}
