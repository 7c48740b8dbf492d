/** Parts of the standard recording that this one lacks, and the causes that each leaves open. */

import type { OperatingData } from "../../channels/index.ts";
import { CATALOGUE } from "../../findings/index.ts";
import type { TallyModel } from "../../tally/index.ts";

type Visit = {
  readonly region: string;
  readonly seen: (model: TallyModel, data: OperatingData) => boolean;
  readonly leavesOpen: readonly string[];
};

const warm = (model: TallyModel, test: (i: number) => boolean) => model.points.some((_, i) => test(i));

const VISITS: readonly Visit[] = [
  {
    region: "key on, engine standing",
    seen: (_, data) => data.keyOn.length > 0,
    leavesOpen: ["map-biased"],
  },
  {
    region: "warm idle",
    seen: (model) => warm(model, (i) => model.points[i]!.states.includes("idle")),
    leavesOpen: ["manifold-leak", "meter-offset", "fuel-unmetered", "injector-offset", "egr-stuck-open"],
  },
  {
    region: "2,500 rev/min at light load",
    seen: (model) =>
      warm(
        model,
        (i) =>
          model.physics.speed[i]! > 32 &&
          model.physics.speed[i]! < 52 &&
          model.physics.pressure[i]! < 0.65 * model.physics.barometer[i]!,
      ),
    leavesOpen: ["meter-scaled", "leak-before-throttle"],
  },
  {
    region: "full load",
    seen: (model) => warm(model, (i) => model.points[i]!.states.includes("full-load") || fullLoadByPressure(model, i)),
    leavesOpen: ["meter-fouled", "breathing-reduced", "fuel-supply-limited", "intake-restricted"],
  },
  {
    region: "wide open at low speed",
    seen: (model) =>
      warm(
        model,
        (i) => model.physics.speed[i]! < 35 && model.physics.pressure[i]! > 0.85 * model.physics.barometer[i]!,
      ),
    leavesOpen: ["meter-offset", "manifold-leak"],
  },
];

function fullLoadByPressure(model: TallyModel, i: number): boolean {
  const boosted = model.engine.induction === "boosted" || model.engine.ignition === "compression";
  const enough = boosted ? 1.7 : 0.92;
  return (
    model.physics.pressure[i]! > enough * model.physics.barometer[i]! &&
    model.physics.air[i]! > 0.6 * model.physics.largestFlow
  );
}

export function notVisited(model: TallyModel, data: OperatingData): { region: string; leavesOpen: string[] }[] {
  const possible = new Set(CATALOGUE.filter((cause) => cause.law.applies(model)).map((cause) => cause.id));
  return VISITS.filter((visit) => !visit.seen(model, data))
    .map((visit) => ({ region: visit.region, leavesOpen: visit.leavesOpen.filter((id) => possible.has(id)) }))
    .filter((visit) => visit.leavesOpen.length > 0);
}
