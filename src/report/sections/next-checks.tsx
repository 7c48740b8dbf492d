/**
 * Sections "Checks made" and "Next checks": what was found in the workshop and what it says, and what would settle it soonest,
 * with how, how long, what it may show, what it would settle, and what to mind.
 */
import type { NextCheck, Outcome, View } from "../../job/result.ts";
import { bitsWords } from "../words/bits-words.ts";
import { causeTitle, listed } from "../words/cause-title.ts";
import { formatNumber, NARROW_SPACE } from "../words/number-words.ts";
import { typeset } from "../words/typeset.ts";

export function ChecksMade({ made }: { readonly made: View["made"] }) {
  return (
    <ul className="checks checks-made">
      {made.map((check) => (
        <li key={`${check.check} ${check.bank}`}>
          <h3>{check.title}</h3>
          <p className="check-result">{typeset(check.result)}</p>
          <p className="check-says">{typeset(check.says)}</p>
        </li>
      ))}
    </ul>
  );
}

export function NextChecks({ outcome }: { readonly outcome: Outcome }) {
  return (
    <ol className="checks">
      {outcome.result.nextChecks.map((check, k) => (
        <li key={check.check}>
          <Check check={check} view={outcome.view} rank={k} />
        </li>
      ))}
    </ol>
  );
}

/** The first stands open, the others unfold; the first few are printed in full, the rest by their line. */
const PRINTED = 3;

function Check({ check, view, rank }: { readonly check: NextCheck; readonly view: View; readonly rank: number }) {
  const told = view.checks[check.check];
  if (told === undefined) return <p>{typeset(check.text)}</p>;
  const settles = check.settles.map((cause) => causeTitle(view, cause, null));
  return (
    <>
      <div className="check-line">
        <h3>{told.title}</h3>
        <p className="check-numbers">
          {formatNumber(check.minutes, 2)}
          {NARROW_SPACE}min, {bitsWords(check.informationBits)}{" "}
          <span className="check-bits">
            {formatNumber(check.informationBits, 2)}
            {NARROW_SPACE}bit
          </span>
        </p>
      </div>
      {settles.length > 0 && <p className="check-settles">May settle: {listed(settles.map(quoted))}.</p>}
      <details className={rank < PRINTED ? "more printed" : "more"} open={rank === 0}>
        <summary>How, with what, and what to mind</summary>
        <p className="check-how">{typeset(told.how)}</p>
        <dl className="facts facts-unknown check-facts">
          <div>
            <dt>with</dt>
            <dd>{told.needs}</dd>
          </div>
          <div>
            <dt>note down</dt>
            <dd>{told.outcomes.join("; ")}</dd>
          </div>
          {told.cautions.length > 0 && (
            <div>
              <dt>mind</dt>
              <dd>{told.cautions.join(" ")}</dd>
            </div>
          )}
          <div className="check-entry">
            <dt>to enter it</dt>
            <dd>
              <code>{told.entry}</code>
            </dd>
          </div>
        </dl>
      </details>
    </>
  );
}

function quoted(title: string): string {
  return `\u201c${title}\u201d`;
}
