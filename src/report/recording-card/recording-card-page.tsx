/** The standard recording on paper: what to do, part by part, with a box to tick, and what a skipped part leaves open. */
import type { CardPart, RecordingCard } from "../../job/recording-card.ts";
import { NumberedSections, type Section } from "../sections/numbered-sections.tsx";
import { formatDuration } from "../words/number-words.ts";
import { typeset } from "../words/typeset.ts";

export type RecordingCardPageProps = { readonly card: RecordingCard };

export function RecordingCardPage({ card }: RecordingCardPageProps) {
  return (
    <article className="card recording-card">
      <header className="card-head">
        <div>
          <h1>{card.title}</h1>
          <p className="complaint">{typeset(card.lead)}</p>
        </div>
        <p className="date">{formatDuration(card.seconds)} in all</p>
      </header>
      <dl className="blanks">
        {BLANKS.map((name) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd />
          </div>
        ))}
      </dl>
      <NumberedSections sections={sectionsOf(card)} />
      <footer className="title-block">
        <dl>
          <div>
            <dt>made with</dt>
            <dd>Airtally {card.toolVersion}</dd>
          </div>
          <div>
            <dt>format</dt>
            <dd>{card.format}</dd>
          </div>
        </dl>
      </footer>
    </article>
  );
}

/** to be filled in by hand */
const BLANKS = ["engine", "date", "barometer", "outside temperature", "file"] as const;

function sectionsOf(card: RecordingCard): readonly Section[] {
  return [
    { id: "before", title: "Before", body: <TickList items={card.before} /> },
    { id: "channels", title: "Record", body: <TickList items={card.channels} /> },
    { id: "parts", title: "The recording", body: <Parts parts={card.parts} /> },
    { id: "cautions", title: "Cautions", body: <PlainList items={card.cautions} /> },
  ];
}

function Parts({ parts }: { readonly parts: readonly CardPart[] }) {
  return (
    <ol className="recording-parts">
      {parts.map((part) => (
        <li key={part.id}>
          <span className="tick" aria-hidden="true" />
          <div className="part-step">
            <h3>
              {part.title} <span className="part-seconds">{formatDuration(part.seconds)}</span>
            </h3>
            <p>{typeset(part.do)}</p>
            {part.cautions.length > 0 && <p className="part-mind">{typeset(part.cautions.join(" "))}</p>}
          </div>
          <div className="part-open">
            <p className="part-open-head">If it is left out, these stay open</p>
            <p>{part.leavesOpen.map(({ title }) => title).join("; ")}.</p>
          </div>
        </li>
      ))}
    </ol>
  );
}

function TickList({ items }: { readonly items: readonly string[] }) {
  return (
    <ul className="ticks">
      {items.map((item) => (
        <li key={item}>
          <span className="tick" aria-hidden="true" />
          {typeset(item)}
        </li>
      ))}
    </ul>
  );
}

function PlainList({ items }: { readonly items: readonly string[] }) {
  return (
    <ul className="plain cautions">
      {items.map((item) => (
        <li key={item}>{typeset(item)}</li>
      ))}
    </ul>
  );
}
