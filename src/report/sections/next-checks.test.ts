import { describe, expect, it } from "vitest";
import { LEAK } from "../fixtures/leak.ts";
import { renderReportHtml } from "../render-report-html.tsx";
import { renderSummaryText } from "../render-summary-text.ts";

const html = renderReportHtml({ outcome: LEAK });

describe("the checks on the page", () => {
  it("are proposed with how, with what, what to mind, what they may settle and the line to enter", () => {
    const section = html.slice(html.indexOf('id="part-next"'), html.indexOf('id="part-engine"'));
    for (const words of [
      "follow hoses, gaskets and seals with a lamp",
      "smoke machine",
      "not flammable gas",
      "May settle: \u201cAir enters after the throttle\u201d.",
      "decides much",
      "smoke-at-manifold",
    ])
      expect(section).toContain(words);
    expect(section.match(/<details[^>]* open/g)).toHaveLength(1);
  });

  it("that were made stand before them, with what they say", () => {
    expect(html.indexOf('id="part-made"')).toBeLessThan(html.indexOf('id="part-next"'));
    expect(html).toContain("its odds rose 2.1-fold");
  });

  it("leave no section where there are none", () => {
    const bare = { ...LEAK, result: { ...LEAK.result, nextChecks: [] }, view: { ...LEAK.view, made: [] } };
    expect(renderReportHtml({ outcome: bare })).not.toMatch(/part-(next|made)/);
  });
});

it("the terminal says what was found, what is next with its minutes, and what then", () => {
  const text = renderSummaryText(LEAK, { width: 100, colour: false });
  expect(text).toMatch(/Found: Oil filler cap opened at idle: hardly any change/);
  expect(text).toMatch(/Next: Smoke test.* 15 min, decides much\./s);
  expect(text).toMatch(/Then: Key on, engine off: manifold pressure against the barometer \(2 min\)\./);
});
