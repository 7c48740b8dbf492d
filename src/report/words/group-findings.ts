/**
 * Findings as they are told: causes that this recording cannot tell apart stand in one row, so that no page ever reads
 * like one part to buy when it is one of several.
 *
 * The chance of a group is that of the explanations which name at least one of its causes (marginals would count a pair
 * twice); where the explanations name none of them, the sum of the marginals, at most 1.
 */
import type { AirtallyResult, Finding } from "../../job/result.ts";

export type FindingRow =
  | { readonly kind: "single"; readonly probability: number; readonly finding: Finding }
  | { readonly kind: "group"; readonly probability: number; readonly members: readonly Finding[] }
  /** causes that shift nothing in this recording: they keep the chance they had before looking */
  | { readonly kind: "unseen"; readonly probability: number; readonly members: readonly Finding[] };

/** A member of a group is told with it from 1 in 100 on; below that it is not what the answer turns on. */
const WORTH_TELLING = 0.01;

/** Of a cause whose large sizes are ruled out the chance fell: it is seen, if only by what is missing. */
const UNCHANGED = 0.5;

export function groupFindings(result: AirtallyResult): readonly FindingRow[] {
  const rows: FindingRow[] = [];
  const taken = new Set<Finding>();
  for (const group of result.inseparable) {
    const members = result.findings.filter(
      (f) => group.includes(f.cause) && f.probability >= WORTH_TELLING && !taken.has(f),
    );
    if (new Set(members.map((f) => f.cause)).size < 2) continue;
    for (const member of members) taken.add(member);
    rows.push({ kind: "group", probability: groupProbability(result, members), members });
  }
  const unseen = result.findings.filter(
    (f) => f.restsOn.length === 0 && (f.bayesFactor ?? 0) > UNCHANGED && !taken.has(f),
  );
  if (unseen.length > 0) {
    for (const finding of unseen) taken.add(finding);
    rows.push({ kind: "unseen", probability: groupProbability(result, unseen), members: unseen });
  }
  for (const finding of result.findings) {
    if (!taken.has(finding)) rows.push({ kind: "single", probability: finding.probability, finding });
  }
  return rows.sort((a, b) => b.probability - a.probability);
}

function groupProbability(result: AirtallyResult, members: readonly Finding[]): number {
  const causes = new Set(members.map((f) => f.cause));
  const named = result.explanations.filter((e) => e.causes.some((cause) => causes.has(cause)));
  const terms = named.length > 0 ? named : members;
  return Math.min(
    1,
    terms.reduce((sum, term) => sum + term.probability, 0),
  );
}
