/** Causes that this recording cannot tell apart, told as one row: what they share, then each with its size. */
import type { Outcome } from "../../job/result.ts";
import { chanceWords } from "../../quantities/index.ts";
import { causeTitle, countWord } from "../words/cause-title.ts";
import type { FindingRow } from "../words/group-findings.ts";
import { typeset } from "../words/typeset.ts";
import { Chance } from "./chance.tsx";
import { FindingDetails, FindingSizes } from "./finding-details.tsx";

type Props = {
  readonly row: Extract<FindingRow, { kind: "group" }>;
  readonly outcome: Outcome;
  readonly leads: boolean;
};

export function GroupRow({ row, outcome, leads }: Props) {
  return (
    <li className="finding finding-group">
      <h3>One of {countWord(row.members.length)} that this recording cannot tell apart</h3>
      <span className="sizes" />
      <Chance probability={row.probability} />
      <p className="speaks">
        The chance is that of the group. No single one of them is shown to be the fault, so none of them is a part to
        buy yet.
      </p>
      <ul className="members">
        {row.members.map((finding, k) => (
          <li key={`${finding.cause} ${finding.bank ?? ""}`} className="finding member">
            <h4>{causeTitle(outcome.view, finding.cause, finding.bank)}</h4>
            <FindingSizes finding={finding} />
            <span className="chance member-chance">{chanceWords(finding.probability)}</span>
            <div className="speaks">
              <p>{typeset(outcome.view.causes[finding.cause]?.speaks ?? "")}</p>
              <FindingDetails finding={finding} printed={leads && k === 0} />
            </div>
          </li>
        ))}
      </ul>
    </li>
  );
}
