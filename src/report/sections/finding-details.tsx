/** The size of a finding, and what stands behind it: the evidence with its numbers, folded until asked for. */
import type { Evidence, Finding, WitnessId } from "../../job/result.ts";
import { chanceWords } from "../../quantities/index.ts";
import { WitnessKey } from "../charts/witness-look.tsx";
import { SD_TO_90 } from "../tally/tally-model.ts";
import { departureText } from "../tally/tally-picture.tsx";
import { WITNESS_WORDS } from "../words/card-words.ts";
import { listed } from "../words/cause-title.ts";
import { formatNumber } from "../words/number-words.ts";
import { tellSize } from "../words/size-words.ts";
import { typeset } from "../words/typeset.ts";

export function FindingSizes({ finding }: { readonly finding: Finding }) {
  const several = finding.sizes.length > 1;
  return (
    <div className="sizes">
      {finding.sizes.map((size) => {
        const told = tellSize(finding.cause, size);
        return (
          <p key={size.name}>
            {several && <span className="size-interval">{told.name}</span>}
            <span className="size-value">{told.value}</span>
            <span className="size-interval">{told.interval}</span>
          </p>
        );
      })}
    </div>
  );
}

/** On paper only what leads shows its evidence: a customer reads two pages, not ten. */
export function FindingDetails({ finding, printed }: { readonly finding: Finding; readonly printed: boolean }) {
  return (
    <details className={printed ? "more printed evidence" : "more evidence"}>
      <summary>Evidence</summary>
      <ul>
        {finding.evidence.map((evidence) => (
          <li key={evidence.text}>
            {typeset(evidence.text)} <EvidenceNumbers evidence={evidence} />
          </li>
        ))}
      </ul>
      <p>{weight(finding)}</p>
      {finding.restsOn.length > 0 && <p>{restsOn(finding.restsOn)}</p>}
    </details>
  );
}

function EvidenceNumbers({ evidence }: { readonly evidence: Evidence }) {
  const { witness, departure, sd, points } = evidence;
  const where = points.length === 0 ? null : `${points.length === 1 ? "stretch" : "stretches"} ${pointList(points)}`;
  const what = departure === null || sd === null ? null : departureText({ departure, half: SD_TO_90 * sd });
  if (witness === null && what === null && where === null) return null;
  return (
    <span className="evidence-numbers">
      {witness !== null && (
        <>
          <WitnessKey witness={witness} />
          {WITNESS_WORDS[witness]}{" "}
        </>
      )}
      {[what, where].filter((part) => part !== null).join(", ")}
    </span>
  );
}

/** "1 to 4, 9, 12": runs drawn together */
function pointList(points: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const point of [...points].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && point === last[1] + 1) last[1] = point;
    else runs.push([point, point]);
  }
  return runs.map(([a, b]) => (a === b ? `${a}` : b === a + 1 ? `${a}, ${b}` : `${a} to ${b}`)).join(", ");
}

function weight(finding: Finding): string {
  const before = `Before the recording: ${chanceWords(finding.priorProbability)}.`;
  const { bayesFactor } = finding;
  if (bayesFactor === null) return `${before} A healthy engine cannot give this recording at all.`;
  return bayesFactor >= 1
    ? `${before} Alone, this cause foretells the recording ${formatNumber(bayesFactor, 2)} times as well as a healthy engine does.`
    : `${before} A healthy engine foretells the recording ${formatNumber(1 / bayesFactor, 2)} times as well as this cause alone does.`;
}

function restsOn(witnesses: readonly string[]): string {
  const names = witnesses.map((w) => (w in WITNESS_WORDS ? WITNESS_WORDS[w as WitnessId] : w));
  return names.length === 1 ? `Rests on one witness alone: ${names[0]}.` : `Rests on: ${listed(names)}.`;
}
