/**
 * The card as one HTML file that needs nothing else: styles inside, no script, no network. The policy in its head forbids
 * both, so that not even a hostile channel name could fetch anything.
 */
import { renderToStaticMarkup } from "react-dom/server";
import { JobCard, type JobCardProps } from "./job-card.tsx";
import css from "./styles/card.css?inline";
import { CARD_WORDS } from "./words/card-words.ts";

export type ReportInput = Pick<JobCardProps, "outcome" | "title" | "complaint" | "date">;

const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

export function renderReportHtml(input: ReportInput): string {
  const page = (
    <html lang="en">
      <head>
        <meta charSet="utf-8" />
        <meta httpEquiv="Content-Security-Policy" content={POLICY} />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <title>{`${input.title ?? CARD_WORDS.defaultTitle}: ${input.outcome.view.headline}`}</title>
        <style>{css}</style>
      </head>
      <body>
        <main>
          <JobCard {...input} />
        </main>
      </body>
    </html>
  );
  return `<!doctype html>\n${renderToStaticMarkup(page)}\n`;
}
