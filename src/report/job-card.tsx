/** The job card: one page read from top to bottom, which prints as it stands. Numbered sections, drawn only if they say something. */
import { AirPath } from "./sections/air-path.tsx";
import { BeforeAfter } from "./sections/before-after.tsx";
import type { ChannelAction } from "./sections/channel-table.tsx";
import { Engine } from "./sections/engine.tsx";
import { Findings } from "./sections/findings.tsx";
import { Head, type HeadProps } from "./sections/head.tsx";
import { ChecksMade, NextChecks } from "./sections/next-checks.tsx";
import { NumberedSections, type Section } from "./sections/numbered-sections.tsx";
import { OpenQuestions } from "./sections/open-questions.tsx";
import { Recordings } from "./sections/recordings.tsx";
import { Tally } from "./sections/tally.tsx";
import { TitleBlock } from "./sections/title-block.tsx";
import { CARD_WORDS } from "./words/card-words.ts";

export type JobCardProps = HeadProps & {
  /** what the app puts beside a column to correct how it was read */
  readonly channelAction?: ChannelAction | undefined;
};

export function JobCard({ outcome, title, complaint, date, channelAction }: JobCardProps) {
  return (
    <article className="card">
      <Head outcome={outcome} title={title} complaint={complaint} date={date} />
      <NumberedSections sections={sections({ outcome, channelAction })} />
      <TitleBlock result={outcome.result} date={date} />
    </article>
  );
}

function sections({ outcome, channelAction }: Pick<JobCardProps, "outcome" | "channelAction">): readonly Section[] {
  const { result, view } = outcome;
  const all: readonly (Section | null)[] = [
    view.comparison === undefined
      ? null
      : { id: "before-after", title: CARD_WORDS.beforeAfter, body: <BeforeAfter comparison={view.comparison} /> },
    { id: "air-path", title: CARD_WORDS.airPath, body: <AirPath outcome={outcome} /> },
    { id: "tally", title: CARD_WORDS.tally, body: <Tally outcome={outcome} /> },
    { id: "findings", title: CARD_WORDS.findings, body: <Findings outcome={outcome} /> },
    view.made.length === 0 ? null : { id: "made", title: CARD_WORDS.checksMade, body: <ChecksMade made={view.made} /> },
    result.nextChecks.length === 0
      ? null
      : { id: "next", title: CARD_WORDS.nextChecks, body: <NextChecks outcome={outcome} /> },
    { id: "engine", title: CARD_WORDS.engine, body: <Engine engine={view.engine} /> },
    {
      id: "recordings",
      title: CARD_WORDS.recordings,
      body: <Recordings outcome={outcome} channelAction={channelAction} />,
    },
    result.warnings.length + result.notVisited.length + result.assumptions.length === 0
      ? null
      : { id: "open", title: CARD_WORDS.open, body: <OpenQuestions outcome={outcome} /> },
    view.cautions.length === 0
      ? null
      : { id: "cautions", title: CARD_WORDS.cautions, body: <Cautions cautions={view.cautions} /> },
  ];
  return all.filter((section) => section !== null);
}

function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  return (
    <ul className="plain cautions">
      {cautions.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}
