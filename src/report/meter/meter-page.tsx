/** The page of one meter: what comes out in a sentence, the picture, the numbers, what to mind. In the manner of the job card. */

import type { MeterResult } from "../../job/meter-result.ts";
import { NumberedSections, type Section } from "../sections/numbered-sections.tsx";
import { typeset } from "../words/typeset.ts";
import { KIND_WORDS, METER_TITLES, tellMeter } from "./meter-words.ts";
import { ambientSections } from "./page/ambient-sections.tsx";
import { benchSections } from "./page/bench-sections.tsx";
import { convertSections } from "./page/convert-sections.tsx";
import { curveSections } from "./page/curve-sections.tsx";
import { fitSections } from "./page/fit-sections.tsx";

export type MeterPageProps = {
  readonly result: MeterResult;
  readonly title?: string | undefined;
  readonly date?: string | undefined;
};

export function MeterPage({ result, title, date }: MeterPageProps) {
  return (
    <article className="card meter-page">
      <header className="card-head">
        <div>
          <h1>{title ?? METER_TITLES[result.kind]}</h1>
          <p className="complaint">{subjectOf(result)}</p>
        </div>
        {date !== undefined && <p className="date">{date}</p>}
      </header>
      <section className="answer" aria-label="Answer">
        <p className="meter-headline">{typeset(result.headline)}</p>
      </section>
      <NumberedSections sections={[...sectionsOf(result), ...mindSection(result)]} />
      <MeterTitleBlock result={result} date={date} />
    </article>
  );
}

function sectionsOf(result: MeterResult): readonly Section[] {
  switch (result.kind) {
    case "convert":
      return convertSections(result);
    case "curve":
      return curveSections(result);
    case "ambient":
      return ambientSections(result);
    case "fit":
      return fitSections(result);
    case "bench":
      return benchSections(result);
  }
}

function mindSection({ warnings }: MeterResult): readonly Section[] {
  if (warnings.length === 0) return [];
  const body = (
    <ul className="plain">
      {warnings.map((warning) => (
        <li key={`${warning.code} ${warning.text}`}>{typeset(warning.text)}</li>
      ))}
    </ul>
  );
  return [{ id: "mind", title: "To be kept in mind", body }];
}

function subjectOf(result: MeterResult): string {
  switch (result.kind) {
    case "convert":
    case "curve":
      return capital(tellMeter(result.meter));
    case "ambient":
      return capital(KIND_WORDS[result.meterKind]);
    case "fit":
      return `${result.points.length} points of ${result.from === "bench sheet" ? "the flow-bench sheet " : ""}${result.file}`;
    case "bench":
      return capital(result.reference);
  }
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function fileOf(result: MeterResult): string {
  return "meter" in result ? result.meter.file : (result.file ?? "none");
}

function MeterTitleBlock({ result, date }: MeterPageProps) {
  return (
    <footer className="title-block">
      <dl>
        <div>
          <dt>made with</dt>
          <dd>Airtally {result.toolVersion}</dd>
        </div>
        <div>
          <dt>format</dt>
          <dd>
            {result.format}, {result.kind}
          </dd>
        </div>
        <div>
          <dt>file</dt>
          <dd className="sha">{fileOf(result)}</dd>
        </div>
        <div>
          <dt>date</dt>
          <dd>{date ?? "not stated"}</dd>
        </div>
      </dl>
    </footer>
  );
}
