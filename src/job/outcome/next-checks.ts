/** The checks proposed next: as they stand in the result, and told in full for the page. */
import { type CheckEntry, type FoundResult, rankChecks, type Weighed } from "../../findings/index.ts";
import type { Prepared } from "../../tally/index.ts";
import { cautionTexts } from "../cautions.ts";
import type { CheckView } from "../check-view.ts";
import type { NextCheck, View } from "../result.ts";
import { round } from "./points.ts";

const PROPOSED = 8;

export function nextChecks(
  weighed: Weighed,
  prepared: Prepared,
  found: readonly FoundResult[],
): { readonly list: readonly NextCheck[]; readonly views: View["checks"] } {
  const ranked = rankChecks(weighed, prepared, found).slice(0, PROPOSED);
  return {
    list: ranked.map(({ check, informationBits, settles }) => ({
      check: check.id,
      text: `${check.title}. ${check.how}`,
      informationBits: round(informationBits),
      minutes: check.minutes,
      settles,
    })),
    views: Object.fromEntries(ranked.map(({ check }) => [check.id, viewOf(check)])),
  };
}

function viewOf(check: CheckEntry): CheckView {
  const { title, how, needs } = check;
  const told =
    check.kind === "words" ? check.outcomes.map((o) => [o.id, o.words]) : check.asks.map((a) => [a.key, a.words]);
  return {
    title,
    how,
    needs,
    outcomes: told.map(([, words]) => words!),
    cautions: cautionTexts(check.cautions),
    entry: entryOf(check),
  };
}

/** A line of the found file, with the choices or examples in it. */
function entryOf(check: CheckEntry): string {
  const told: [string, unknown][] =
    check.kind === "words"
      ? [["result", check.outcomes.map((o) => o.id).join(" | ")]]
      : check.asks.map((ask) => [ask.key, ask.dimension === "number" ? Number(ask.example) : ask.example]);
  const pairs = [["check", check.id], ...told].map(
    ([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`,
  );
  return `{ ${pairs.join(", ")} }`;
}
