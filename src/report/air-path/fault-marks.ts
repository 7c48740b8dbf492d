/**
 * Which causes are drawn where they live. An answer that names one explanation draws it plainly; where several compete,
 * or a group cannot be told apart, each candidate is drawn dashed; a healthy engine has none.
 */
import type { Outcome } from "../../job/result.ts";
import { groupFindings } from "../words/group-findings.ts";

export type FaultMark = { readonly cause: string; readonly bank: 1 | 2 | null; readonly certain: boolean };

/** of a group that is likely as a whole */
const MEMBER_FROM = 0.05;
/** of an open answer; and only if it is seen and was raised, or a healthy engine would be drawn full of marks */
const CANDIDATE_FROM = 0.1;
const MOST_CANDIDATES = 4;

export function faultMarks({ result }: Outcome): readonly FaultMark[] {
  if (result.answer === "healthy") return [];
  const first = groupFindings(result)[0];
  const bankOf = (cause: string) => result.findings.find((f) => f.cause === cause)?.bank ?? null;
  const mark = (certain: boolean) => (cause: string) => ({ cause, bank: bankOf(cause), certain });
  if (result.answer !== "open" && first?.kind === "single") {
    const named = result.explanations.find((e) => e.causes.includes(first.finding.cause));
    return (named?.causes ?? [first.finding.cause]).map(mark(true));
  }
  const candidates =
    result.answer !== "open" && first?.kind === "group"
      ? first.members.filter((f) => f.probability >= MEMBER_FROM)
      : result.findings.filter(
          (f) => f.probability >= CANDIDATE_FROM && f.probability > f.priorProbability && f.restsOn.length > 0,
        );
  const causes = candidates.map((f) => f.cause);
  return [...new Set(causes)].slice(0, MOST_CANDIDATES).map(mark(false));
}
