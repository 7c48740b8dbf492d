/** The standard recording as one HTML file to print (html-page.tsx). */
import { htmlPage } from "../html-page.tsx";
import css from "../styles/recording-card-page.css?inline";
import { RecordingCardPage, type RecordingCardPageProps } from "./recording-card-page.tsx";

export function renderRecordingCardHtml({ card }: RecordingCardPageProps): string {
  return htmlPage({ title: card.title, css, body: <RecordingCardPage card={card} /> });
}
