/** An answer of `airtally meter` as one HTML file (html-page.tsx). */
import { htmlPage } from "../html-page.tsx";
import css from "../styles/meter-page.css?inline";
import { MeterPage, type MeterPageProps } from "./meter-page.tsx";
import { METER_TITLES } from "./meter-words.ts";

export function renderMeterHtml(input: MeterPageProps): string {
  return htmlPage({
    title: `${input.title ?? METER_TITLES[input.result.kind]}: ${input.result.headline}`,
    css,
    body: <MeterPage {...input} />,
  });
}
