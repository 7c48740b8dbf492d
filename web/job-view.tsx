/** An answered job: for the demo a line that says it is invented, for one's own what was corrected, then the card. */
import type { AboutAnswer } from "../edge/server/contract.ts";
import { JobCard } from "../src/report/index.ts";
import { ChannelCorrection } from "./channel-correction.tsx";
import { withCorrection } from "./channel-list-text.ts";
import type { Answered, Draft } from "./job.ts";
import { today } from "./today.ts";

type Props = {
  readonly answered: Answered;
  readonly about: AboutAnswer | null;
  readonly busy: boolean;
  readonly onRun: (draft: Draft) => void;
  readonly onEdit: () => void;
};

export function JobView({ answered, about, busy, onRun, onEdit }: Props) {
  if (answered.kind === "demo") {
    const { outcome, title, complaint, note } = answered.answer;
    return (
      <>
        <aside className="app-note" aria-label="About this job">
          <p>
            <strong>{note}</strong> Drop a recording anywhere on this page to start your own.
          </p>
        </aside>
        <JobCard outcome={outcome} title={title} complaint={complaint} date={today()} />
      </>
    );
  }
  const { answer, draft } = answered;
  return (
    <>
      <aside className="app-note" aria-label="About this job">
        {draft.corrections.map((c) => (
          <p key={`${c.column} ${c.header}`}>
            Column <b>{c.header === "" ? c.column : c.header}</b>{" "}
            {c.quantity === null ? "is left out" : `is read as ${nameOf(about, c.quantity)}`}, as you said.{" "}
            <button
              type="button"
              className="quiet"
              disabled={busy}
              onClick={() => onRun({ ...draft, corrections: draft.corrections.filter((other) => other !== c) })}
            >
              Undo
            </button>
          </p>
        ))}
        <p>
          <button type="button" className="quiet" onClick={onEdit}>
            Change the engine or the recordings
          </button>
        </p>
      </aside>
      <JobCard
        outcome={answer.outcome}
        title={draft.title === "" ? undefined : draft.title}
        complaint={draft.complaint === "" ? undefined : draft.complaint}
        date={today()}
        channelAction={
          about === null
            ? undefined
            : ({ channel }) => (
                <ChannelCorrection
                  channel={channel}
                  quantities={about.quantities}
                  busy={busy}
                  onCorrect={(added) => onRun({ ...draft, corrections: withCorrection(draft.corrections, added) })}
                />
              )
        }
      />
    </>
  );
}

function nameOf(about: AboutAnswer | null, id: string): string {
  return about?.quantities.find((q) => q.id === id)?.name ?? id;
}
