/** What the customer reads first: the warning if there is one, the word, the sentence, what it means and what not. */
import type { Outcome } from "../../job/result.ts";
import { ANSWER_MEANING, ANSWER_WORDS, CARD_WORDS } from "../words/card-words.ts";
import { leadWords } from "../words/lead-words.ts";
import { typeset } from "../words/typeset.ts";

export type HeadProps = {
  readonly outcome: Outcome;
  readonly title?: string | undefined;
  readonly complaint?: string | undefined;
  readonly date?: string | undefined;
};

export function Head({ outcome, title, complaint, date }: HeadProps) {
  const { result, view } = outcome;
  return (
    <>
      <header className="card-head">
        <div>
          <h1>{title ?? CARD_WORDS.defaultTitle}</h1>
          <p className="complaint">{complaint ?? view.engine.sentence}</p>
        </div>
        {date !== undefined && <p className="date">{date}</p>}
      </header>
      {result.warning !== null && (
        <p className="warning-line">
          <strong>{CARD_WORDS.warning}</strong> {result.warning}
        </p>
      )}
      <section className="answer" aria-label="Answer">
        <h2>
          <span className={`stamp stamp-${result.answer}`}>{ANSWER_WORDS[result.answer]}</span>{" "}
          <span className="headline">{typeset(view.headline)}</span>
        </h2>
        <p className="stamp-meaning">
          {ANSWER_WORDS[result.answer]}: {ANSWER_MEANING[result.answer]}.
        </p>
        <p className="summary">{typeset([leadWords(outcome) ?? "", view.summary].join(" ").trim())}</p>
        {view.meansNot !== "" && (
          <p className="means-not">
            <span>{CARD_WORDS.meansNot}.</span> {typeset(view.meansNot)}
          </p>
        )}
      </section>
    </>
  );
}
