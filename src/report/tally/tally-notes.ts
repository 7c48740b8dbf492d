/**
 * Letters on the tally picture: a piece of evidence that speaks of one to three stretches of one witness is marked on
 * the picture and read beside it, because such points are often the ones that tell two causes apart.
 */
import type { Evidence, Outcome, WitnessId } from "../../job/result.ts";

export type TallyNote = {
  readonly letter: string;
  readonly witness: WitnessId;
  readonly points: readonly number[];
  readonly text: string;
};

const MOST_POINTS = 3;
const MOST_NOTES = 3;
const WORTH_A_LETTER = 0.05;

export function tallyNotes({ result, view }: Outcome): readonly TallyNote[] {
  // Without a signature on the picture there is nothing to tell apart.
  if (view.signatures.length === 0) return [];
  return result.findings
    .filter((finding) => finding.probability >= WORTH_A_LETTER)
    .flatMap((finding) => finding.evidence)
    .filter(speaksOfFewPoints)
    .slice(0, MOST_NOTES)
    .map((evidence, k) => ({
      letter: String.fromCharCode("a".charCodeAt(0) + k),
      witness: evidence.witness,
      points: evidence.points,
      text: evidence.text,
    }));
}

function speaksOfFewPoints(evidence: Evidence): evidence is Evidence & { readonly witness: WitnessId } {
  return evidence.witness !== null && evidence.points.length > 0 && evidence.points.length <= MOST_POINTS;
}
