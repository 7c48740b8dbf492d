/** The numbers of the answer in one sentence, told before what they mean: size with its interval, and the chance. */

import type { Finding, Outcome } from "../../job/result.ts";
import { chanceWords } from "../../quantities/index.ts";
import { causeSize } from "./cause-sizes.ts";
import { causeTitle, lowerFirst, sentence } from "./cause-title.ts";
import { groupFindings } from "./group-findings.ts";
import { tellSize } from "./size-words.ts";

/** of a group: how many are told with their size, and from which chance */
const MOST_MEMBERS = 3;
const MEMBER_FROM = 0.05;

/** null where the answer is open: its summary tells the chances. */
export function leadWords(outcome: Outcome): string | null {
  const { result } = outcome;
  if (result.answer === "open") return null;
  if (result.answer === "healthy" || result.healthyProbability >= 0.5)
    return `Chance: ${chanceWords(result.healthyProbability)}.`;
  const first = groupFindings(result).find((row) => row.kind !== "unseen");
  if (first === undefined) return null;
  if (first.kind === "single") return sentence(`${sizesWords(first.finding)}, ${chanceOf(first.probability)}`);
  const told = first.members.filter((f) => f.probability >= MEMBER_FROM).slice(0, MOST_MEMBERS);
  if (told.length < 2) return sentence(`${sizesWords(first.members[0]!)}, ${chanceOf(first.probability)}`);
  return `Together ${chanceWords(first.probability)}: ${told.map((f) => memberWords(f, outcome)).join("; or ")}.`;
}

function memberWords(finding: Finding, { view }: Outcome): string {
  const title = lowerFirst(causeTitle(view, finding.cause, finding.bank));
  return `${title} (${sizesWords(finding)}; ${chanceWords(finding.probability)})`;
}

function sizesWords({ cause, sizes }: Finding): string {
  return sizes
    .map((size) => {
      const told = tellSize(cause, size);
      // A ratio is told by its distance from one, so its name ("delivered over expected") would mislead.
      const named = sizes.length > 1 || size.unit !== "1";
      const { where } = causeSize(cause, cause);
      const value = named ? `${size.name} ${told.value}` : `size ${told.value}${where === "" ? "" : ` ${where}`}`;
      return `${value}, between ${told.interval.replace(" to ", " and ")}`;
    })
    .join("; ");
}

function chanceOf(probability: number): string {
  return `chance ${chanceWords(probability)}`;
}
