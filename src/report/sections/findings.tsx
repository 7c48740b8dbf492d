/** Section "Findings": each cause or group with size, chance, what speaks for and against, and its evidence. */
import type { Outcome, WayView } from "../../job/result.ts";
import { CARD_WORDS } from "../words/card-words.ts";
import { causeTitle, countWord, sentence } from "../words/cause-title.ts";
import { type FindingRow, groupFindings } from "../words/group-findings.ts";
import { pairWords } from "../words/pair-words.ts";
import { tellExclusion } from "../words/size-words.ts";
import { typeset } from "../words/typeset.ts";
import { Chance } from "./chance.tsx";
import { FindingDetails, FindingSizes } from "./finding-details.tsx";
import { GroupRow } from "./group-row.tsx";

/** Rows below this chance are folded away, unless they are all there is. */
const SHOWN_FROM = 0.01;
const NOT_NEGLIGIBLE = 0.0005;
const MOST_PAIRS = 3;

export function Findings({ outcome }: { readonly outcome: Outcome }) {
  const { result } = outcome;
  const rows = groupFindings(result);
  const shown = rows.filter((row) => row.probability >= SHOWN_FROM);
  const folded = rows.filter((row) => row.probability < SHOWN_FROM);
  const healthy = result.healthyProbability;
  const drawRow = (row: FindingRow) => <Row key={rowKey(row)} row={row} outcome={outcome} leads={row === rows[0]} />;
  const pairs = outcome.view.ways.filter((way) => way.parts.length > 1).slice(0, MOST_PAIRS);
  const drawPair = (pair: WayView) => <PairRow key={pair.parts.join(" ")} pair={pair} />;
  return (
    <>
      <div className="finding finding-head" aria-hidden="true">
        <span>cause</span>
        <span>size, 90 %</span>
        <span>chances</span>
        <span>what speaks for and against</span>
      </div>
      <ol className="findings">
        {shown.filter((row) => row.probability >= healthy).map(drawRow)}
        {pairs.filter((pair) => pair.probability >= healthy).map(drawPair)}
        <PlainRow title={CARD_WORDS.healthy} probability={healthy} speaks={outcome.view.causes.healthy?.speaks} />
        {shown.filter((row) => row.probability < healthy).map(drawRow)}
        {pairs.filter((pair) => pair.probability < healthy).map(drawPair)}
        <PlainRow
          title={CARD_WORDS.unexplained}
          probability={result.unexplainedProbability}
          speaks={outcome.view.causes.unexplained?.speaks}
        />
        {result.othersProbability >= NOT_NEGLIGIBLE && (
          <PlainRow title={CARD_WORDS.others} probability={result.othersProbability} />
        )}
      </ol>
      {folded.length > 0 && (
        <details className="more">
          <summary>
            {folded.length === 1 ? "One more cause" : `${folded.length} more causes`} considered, each fewer than 1 in
            100
          </summary>
          <ol className="findings">{folded.map(drawRow)}</ol>
        </details>
      )}
      <Excluded outcome={outcome} />
    </>
  );
}

type RowProps = { readonly row: FindingRow; readonly outcome: Outcome; readonly leads: boolean };

function Row({ row, outcome, leads }: RowProps) {
  if (row.kind === "group") return <GroupRow row={row} outcome={outcome} leads={leads} />;
  if (row.kind === "unseen") {
    return <UnseenRow titles={row.members.map((f) => causeTitle(outcome.view, f.cause, f.bank))} {...row} />;
  }
  const { finding } = row;
  return (
    <li className="finding">
      <h3>{causeTitle(outcome.view, finding.cause, finding.bank)}</h3>
      <FindingSizes finding={finding} />
      <Chance probability={row.probability} />
      <div className="speaks">
        <p>{typeset(outcome.view.causes[finding.cause]?.speaks ?? "")}</p>
        <FindingDetails finding={finding} printed={leads} />
      </div>
    </li>
  );
}

function UnseenRow({ titles, probability }: { readonly titles: readonly string[]; readonly probability: number }) {
  return (
    <li className="finding finding-plain">
      <h3>{CARD_WORDS.unseen}</h3>
      <span className="sizes" />
      <Chance probability={probability} />
      <div className="speaks">
        <p>
          {sentence(`${countWord(titles.length)} cause${titles.length === 1 ? "" : "s"}: ${CARD_WORDS.unseenKeeps}`)}
        </p>
        <details className="more printed">
          <summary>Which</summary>
          <p>{titles.join("; ")}.</p>
        </details>
      </div>
    </li>
  );
}

function PairRow({ pair }: { readonly pair: WayView }) {
  return (
    <li className="finding">
      <h3>{pairWords(pair)}</h3>
      <span className="sizes" />
      <Chance probability={pair.probability} />
      <p className="speaks">Counted within the rows of its causes, not on top of them.</p>
    </li>
  );
}

type PlainProps = { readonly title: string; readonly probability: number; readonly speaks?: string | undefined };

function PlainRow({ title, probability, speaks }: PlainProps) {
  return (
    <li className="finding finding-plain">
      <h3>{title}</h3>
      <span className="sizes" />
      <Chance probability={probability} />
      {speaks !== undefined && <p className="speaks">{speaks}</p>}
    </li>
  );
}

function Excluded({ outcome }: { readonly outcome: Outcome }) {
  const told = outcome.result.excluded
    .map((e) => tellExclusion(e, causeTitle(outcome.view, e.cause, null)))
    .filter((text) => text !== null);
  if (told.length === 0) return null;
  return (
    <div className="excluded">
      <h3>Ruled out, 95 %</h3>
      <ul>
        {told.map((text) => (
          <li key={text}>{sentence(text)}</li>
        ))}
      </ul>
    </div>
  );
}

function rowKey(row: FindingRow): string {
  const findings = row.kind === "single" ? [row.finding] : row.members;
  return findings.map((f) => `${f.cause} ${f.bank ?? ""}`).join(", ");
}
