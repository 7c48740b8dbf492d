/** Parts of the standard recording that this one lacks, and the causes that each leaves open. */
import type { OperatingData } from "../../channels/index.ts";
import { CATALOGUE, visitedParts } from "../../findings/index.ts";
import type { TallyModel } from "../../tally/index.ts";
import { type RegionId, STANDARD_PARTS } from "../standard-recording/standard-parts.ts";

/** Not steady running: whether they are there is not told from operating points, so they are not called missing. */
const NOT_LOOKED_FOR: readonly RegionId[] = ["snap", "key-off"];

export function notVisited(model: TallyModel, data: OperatingData): { region: string; leavesOpen: string[] }[] {
  const possible = new Set(CATALOGUE.filter((cause) => cause.law.applies(model)).map((cause) => cause.id));
  const seen = new Set<RegionId>([...visitedParts(model), ...(data.keyOn.length > 0 ? (["key-on"] as const) : [])]);
  return STANDARD_PARTS.flatMap((part) => part.regions)
    .filter(({ id }) => !NOT_LOOKED_FOR.includes(id) && !seen.has(id))
    .map(({ name, leavesOpen }) => ({ region: name, leavesOpen: leavesOpen.filter((id) => possible.has(id)) }))
    .filter((visit) => visit.leavesOpen.length > 0);
}
