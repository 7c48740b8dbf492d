/**
 * report: draws the job card, the pages of a meter, and the card of the standard recording.
 * In: an Outcome (the result and what the page draws beside it) or an answer about a meter, a title, a date as text. Out: React
 * elements, one self-contained HTML page, a terminal summary. Pure: no clock, no DOM, no network.
 * Refuses: to calculate anything about the engine, to add a number that is not in the outcome.
 */

export type * from "../job/meter-result.ts";
export { JobCard, type JobCardProps } from "./job-card.tsx";
export { MeterPage, type MeterPageProps } from "./meter/meter-page.tsx";
export { renderMeterHtml } from "./meter/render-meter-html.tsx";
export { type MeterTextOptions, renderMeterText } from "./meter/render-meter-text.ts";
export { renderRecordingCardHtml } from "./recording-card/render-recording-card-html.tsx";
export { renderRecordingCardText } from "./recording-card/render-recording-card-text.ts";
export { type ReportInput, renderReportHtml } from "./render-report-html.tsx";
export { renderSummaryText, type SummaryOptions } from "./render-summary-text.ts";
export { ANSWER_WORDS } from "./words/card-words.ts";
export { type FindingRow, groupFindings } from "./words/group-findings.ts";
export { formatDuration, formatInterval, formatNumber, formatPercent, formatUnit } from "./words/number-words.ts";
export { tellExclusion, tellSize } from "./words/size-words.ts";
export { textTable } from "./words/text-table.ts";
export { wrapText } from "./words/wrap-text.ts";
