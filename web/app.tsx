/** The page as a whole: it opens with the demo job answered; a new job is a form, and its answer the same card. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { AboutAnswer } from "../edge/server/contract.ts";
import type { Failure } from "../src/quantities/index.ts";
import { ANSWER_WORDS } from "../src/report/index.ts";
import * as api from "./api.ts";
import { AppBar } from "./app-bar.tsx";
import { FailureNotice } from "./failure-notice.tsx";
import { type Answered, type Draft, EMPTY_DRAFT, partsOf, withRecordings } from "./job.ts";
import { JobView } from "./job-view.tsx";
import { NewJob } from "./new-job.tsx";
import { Progress } from "./progress.tsx";
import { useDroppedFiles } from "./use-dropped-files.ts";

type Screen = "card" | "form";
type Running = { readonly what: string; readonly cancel: (() => void) | null };

export function App() {
  const [about, setAbout] = useState<AboutAnswer | null>(null);
  const [answered, setAnswered] = useState<Answered | null>(null);
  const [draft, setDraft] = useState<Draft>(EMPTY_DRAFT);
  const [screen, setScreen] = useState<Screen>("card");
  const [running, setRunning] = useState<Running | null>({ what: "Working out the demo job", cancel: null });
  const [failed, setFailed] = useState<Failure | null>(null);
  const [said, setSaid] = useState("");
  const main = useRef<HTMLElement>(null);

  useEffect(() => {
    api.about().then((answer) => answer.ok && setAbout(answer.value));
    api.demo().then((answer) => {
      setRunning(null);
      if (!answer.ok) setFailed(answer);
      // a job that was answered meanwhile stays
      else setAnswered((before) => before ?? { kind: "demo", answer: answer.value });
    });
  }, []);

  const show = useCallback((next: Screen) => {
    setScreen(next);
    setFailed(null);
    main.current?.focus();
    window.scrollTo(0, 0);
  }, []);

  const run = useCallback(
    async (job: Draft) => {
      const abort = new AbortController();
      setFailed(null);
      setDraft(job);
      setRunning({
        what: "Reading the recordings and holding the witnesses against each other",
        cancel: () => abort.abort(),
      });
      const answer = await api.check(partsOf(job), abort.signal);
      setRunning(null);
      if (answer.ok) {
        setAnswered({ kind: "own", answer: answer.value, draft: job });
        const { result, view } = answer.value.outcome;
        setSaid(`Answered. ${ANSWER_WORDS[result.answer]}: ${view.headline}`);
        show("card");
      } else if (answer.reason === api.CANCELLED) {
        setSaid("Cancelled. Nothing was changed.");
        main.current?.focus();
      } else setFailed(answer);
    },
    [show],
  );

  const dragging = useDroppedFiles((files) => {
    setDraft((before) => withRecordings(before, files));
    show("form");
  });

  return (
    <div className={dragging ? "app app-dragging" : "app"}>
      <a className="skip" href="#main">
        To the card
      </a>
      <AppBar
        answered={screen === "card" ? answered : null}
        onNew={
          screen === "form"
            ? null
            : () => {
                setDraft(EMPTY_DRAFT);
                show("form");
              }
        }
        onBack={screen === "form" && answered !== null ? () => show("card") : null}
      />
      <p role="status" className="unseen">
        {said}
      </p>
      <main id="main" tabIndex={-1} ref={main}>
        {running !== null && <Progress what={running.what} onCancel={running.cancel} />}
        {failed !== null && <FailureNotice failure={failed} />}
        {screen === "form" && (
          <NewJob draft={draft} busy={running !== null} onChange={setDraft} onRun={run} about={about} />
        )}
        {screen === "card" && answered !== null && (
          <JobView answered={answered} about={about} busy={running !== null} onRun={run} onEdit={() => show("form")} />
        )}
      </main>
    </div>
  );
}
