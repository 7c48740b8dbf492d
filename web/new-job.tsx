/** A new job: recordings, what is known of the engine, and the run. What is left empty says what that costs. */
import { type FormEvent, useEffect, useRef, useState } from "react";
import type { AboutAnswer } from "../edge/server/contract.ts";
import { FIELD_GROUPS } from "./engine/engine-fields.ts";
import { EngineFile } from "./engine/engine-file.tsx";
import { FieldGroupPart } from "./engine/field-group.tsx";
import { type Draft, problemsOf, withRecordings } from "./job.ts";
import { ProblemList } from "./problem-list.tsx";
import { Recordings } from "./recordings.tsx";

type Props = {
  readonly draft: Draft;
  readonly busy: boolean;
  readonly about: AboutAnswer | null;
  readonly onChange: (draft: Draft) => void;
  readonly onRun: (draft: Draft) => void;
};

export function NewJob({ draft, busy, about, onChange, onRun }: Props) {
  const [tried, setTried] = useState(0);
  const problems = tried > 0 ? problemsOf(draft) : [];
  const list = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a new attempt takes the focus, not every keystroke
  useEffect(() => {
    list.current?.focus();
  }, [tried]);

  const run = (event: FormEvent) => {
    event.preventDefault();
    setTried((n) => n + 1);
    if (problemsOf(draft).length === 0) onRun(draft);
  };

  return (
    <form className="card new-job" onSubmit={run} noValidate aria-label="New job">
      <header className="card-head">
        <div>
          <h1>New job</h1>
          <p className="complaint">Say what you know and leave the rest empty: it then gets a wider assumption.</p>
        </div>
      </header>
      {problems.length > 0 && <ProblemList problems={problems} reference={list} />}
      <section className="part" aria-labelledby="part-recordings">
        <span className="part-number" aria-hidden="true">
          1
        </span>
        <div className="part-body">
          <h2 id="part-recordings">Recordings</h2>
          <Recordings
            files={draft.recordings}
            limit={about?.uploadLimit_bytes ?? null}
            problem={problems.find((p) => p.path === "recordings")?.problem ?? null}
            onAdd={(files) => onChange(withRecordings(draft, files))}
            onRemove={(file) => onChange({ ...draft, recordings: draft.recordings.filter((f) => f !== file) })}
          />
        </div>
      </section>
      <section className="part" aria-labelledby="part-job">
        <span className="part-number" aria-hidden="true">
          2
        </span>
        <div className="part-body">
          <h2 id="part-job">The job</h2>
          <div className="fields">
            <p className="field">
              <label htmlFor="job-title">Title of the card</label>
              <input
                id="job-title"
                value={draft.title}
                onChange={(e) => onChange({ ...draft, title: e.target.value })}
              />
            </p>
            <p className="field">
              <label htmlFor="job-complaint">Complaint</label>
              <input
                id="job-complaint"
                value={draft.complaint}
                onChange={(e) => onChange({ ...draft, complaint: e.target.value })}
              />
            </p>
          </div>
        </div>
      </section>
      {FIELD_GROUPS.map((group, k) => (
        <FieldGroupPart
          key={group.id}
          group={group}
          number={k + 3}
          form={draft.engine}
          tried={tried > 0}
          onChange={(engine) => onChange({ ...draft, engine })}
        >
          {k === 0 && <EngineFile form={draft.engine} onChange={(engine) => onChange({ ...draft, engine })} />}
        </FieldGroupPart>
      ))}
      <p className="run">
        <button type="submit" className="primary" disabled={busy}>
          Check this engine
        </button>
      </p>
    </form>
  );
}
