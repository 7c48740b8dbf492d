import { expect, it } from "vitest";
import type { ComparisonView } from "../job/result.ts";
import { HEALTHY } from "./fixtures/healthy.ts";
import { renderReportHtml } from "./render-report-html.tsx";
import { renderSummaryText } from "./render-summary-text.ts";

const COMPARISON: ComparisonView = {
  sentence: "In the visit “before” a hole; in “after” none: at idle the air meter went from 15 % low to agreement.",
  visits: [
    {
      name: "before",
      recordings: ["b.csv"],
      answer: "likely",
      headline: "Air enters after the throttle.",
      healthyProbability: 0.01,
      leading: {
        cause: "manifold-leak",
        title: "Air enters after the throttle",
        bank: null,
        probability: 0.9,
        alike: [],
        size: { name: "area", value: 3.7, unit: "mm2", low90: 2.3, high90: 4.9 },
      },
      departures: [{ witness: "meter", region: "idle", departure: Math.log(0.85), sd: 0.01, points: 4 }],
    },
    {
      name: "after",
      recordings: ["a.csv"],
      answer: "healthy",
      headline: "The witnesses agree.",
      healthyProbability: 0.8,
      leading: null,
      departures: [
        { witness: "meter", region: "idle", departure: 0, sd: 0.01, points: 4 },
        { witness: "meter", region: "full load", departure: 0, sd: 0.03, points: 2 },
      ],
    },
  ],
};
const OUTCOME = { result: HEALTHY.result, view: { ...HEALTHY.view, comparison: COMPARISON } };

it("shows each visit, each departure and its change, and says where a visit never went", () => {
  const html = renderReportHtml({ outcome: OUTCOME });
  expect(html).toContain(">Before and after</h2>");
  const text = html.replaceAll("\u202f", " ").replace(/<!-- -->/g, "");
  for (const told of [
    "Likely (healthy: 1 in 100)",
    "3.7 mm² (2.3 to 4.9)",
    "−15 % ± 1.6 %",
    "+15 % ± 2.3 %",
    "not visited",
  ])
    expect(text).toContain(told);
  expect(renderReportHtml({ outcome: HEALTHY })).not.toContain("Before and after");
});

it("says the same in a terminal", () => {
  const text = renderSummaryText(OUTCOME, { width: 100, colour: false });
  expect(text).toContain("In the visit “before” a hole");
  expect(text).toContain("before: Likely, Air enters after the throttle, 9 in 10, 3.7 mm² (2.3 to 4.9).");
  expect(text).toContain("after: Healthy, nothing stood out.");
});
