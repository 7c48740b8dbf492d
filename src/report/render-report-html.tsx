/** The card as one HTML file (html-page.tsx). */
import { htmlPage } from "./html-page.tsx";
import { JobCard, type JobCardProps } from "./job-card.tsx";
import css from "./styles/card.css?inline";
import { CARD_WORDS } from "./words/card-words.ts";

export type ReportInput = Pick<JobCardProps, "outcome" | "title" | "complaint" | "date">;

export function renderReportHtml(input: ReportInput): string {
  return htmlPage({
    title: `${input.title ?? CARD_WORDS.defaultTitle}: ${input.outcome.view.headline}`,
    css,
    body: <JobCard {...input} />,
  });
}
