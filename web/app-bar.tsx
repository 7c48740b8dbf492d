/** The bar above the card: whose page this is, and what can be done with the job that is open. */
import { reportAddress } from "./api.ts";
import type { Answered } from "./job.ts";
import { saveText } from "./save-text.ts";
import { today } from "./today.ts";

type Props = {
  readonly answered: Answered | null;
  readonly onNew: (() => void) | null;
  readonly onBack: (() => void) | null;
};

export function AppBar({ answered, onNew, onBack }: Props) {
  return (
    <header className="app-bar">
      <p className="app-name">
        <svg width="30" height="24" viewBox="0 4 32 24" aria-hidden="true">
          <path d="M3 13V6H29V13M3 19V26H29V19" />
          <path d="M3 13H6L9 10L12 13H15L18 10L21 13H29M3 19H6L9 22L12 19H15L18 22L21 19H29" />
        </svg>
        Airtally
      </p>
      <nav aria-label="Job">
        {onBack !== null && (
          <button type="button" onClick={onBack}>
            Back to the card
          </button>
        )}
        {answered !== null && <JobActions answered={answered} />}
        {onNew !== null && (
          <button type="button" className="primary" onClick={onNew}>
            New job
          </button>
        )}
      </nav>
    </header>
  );
}

function JobActions({ answered }: { readonly answered: Answered }) {
  const { id, outcome } = answered.answer;
  const { title, complaint } = answered.kind === "demo" ? answered.answer : answered.draft;
  return (
    <>
      <a
        className="button"
        href={reportAddress(id, { title, complaint, date: today() })}
        download="airtally-report.html"
      >
        Save report
      </a>
      <button
        type="button"
        onClick={() => saveText("airtally-result.json", `${JSON.stringify(outcome.result, null, 2)}\n`)}
      >
        Save result
      </button>
      <button type="button" onClick={() => window.print()}>
        Print
      </button>
    </>
  );
}
