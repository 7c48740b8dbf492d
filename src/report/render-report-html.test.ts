import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Outcome } from "../job/result.ts";
import { FIXTURES } from "./fixtures/all.ts";
import { LEAK } from "./fixtures/leak.ts";
import { renderReportHtml } from "./render-report-html.tsx";

const HOSTILE = '"><script>alert(1)</script><img src=x onerror=alert(2)>';

function hostile(): Outcome {
  const [channel] = LEAK.view.channels[0] ?? [];
  const [trace] = LEAK.view.timelines;
  if (channel === undefined || trace === undefined) throw new Error("the fixture has no channel or timeline");
  return {
    result: {
      ...LEAK.result,
      recordings: [{ name: HOSTILE, sha256: "0" }],
      warnings: [{ code: "x", text: HOSTILE }],
    },
    view: {
      ...LEAK.view,
      headline: HOSTILE,
      timelines: [{ ...trace, name: HOSTILE, states: [{ state: HOSTILE, start_s: 0, end_s: 1 }] }],
      channels: [[{ ...channel, header: HOSTILE, reasons: [HOSTILE], unit: HOSTILE }]],
    },
  };
}

describe("renderReportHtml", () => {
  it("is one page with the sections of the card in their order", () => {
    const html = renderReportHtml({ outcome: LEAK, title: "An invented engine", date: "24 November 2026" });
    expect(html.startsWith('<!doctype html>\n<html lang="en">')).toBe(true);
    const order = [
      "Air path",
      "Tally",
      "Findings",
      "Next checks",
      "Engine and meter",
      "Recordings",
      "Assumptions",
      "Cautions",
    ];
    const places = order.map((title) => html.indexOf(`>${title}`));
    expect(places.every((place) => place > 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    expect(html).toContain("9 in 10");
    expect(html).toContain(LEAK.result.recordings[0]?.sha256);
  });

  it("draws no departure where one witness speaks alone", () => {
    const html = renderReportHtml({ outcome: FIXTURES.oneWitness.outcome });
    expect(html).toContain("it has nothing to depart from");
    expect(html).not.toContain('class="tally-picture"');
    expect(renderReportHtml({ outcome: LEAK })).toContain('class="tally-picture"');
  });

  it("draws next checks only where there are some", () => {
    const html = renderReportHtml({ outcome: FIXTURES.diesel.outcome });
    expect(html).not.toContain("Next checks");
  });

  it.each(Object.entries(FIXTURES))("fetches and runs nothing (%s)", (_, { outcome, title }) => {
    const html = renderReportHtml({ outcome, title });
    expect(html).toContain("default-src &#x27;none&#x27;");
    expect(html).not.toMatch(/<script|<link|<img|<iframe|<object|<embed|\bsrc=|\bhref=|@import|url\(|https?:/i);
  });

  it("has style sheets that fetch nothing", () => {
    const folder = new URL("./styles/", import.meta.url);
    for (const name of readdirSync(folder)) {
      const css = readFileSync(new URL(name, folder), "utf8");
      const imports = [...css.matchAll(/@import\s+"([^"]+)"/g)].map((match) => match[1]);
      expect(imports.every((target) => target?.startsWith("./"))).toBe(true);
      expect(css).not.toMatch(/url\(|https?:/);
    }
  });

  it("shows hostile header names, file names and units as text", () => {
    const html = renderReportHtml({ outcome: hostile(), title: HOSTILE, complaint: HOSTILE, date: HOSTILE });
    expect(html).not.toContain("<script");
    expect(html).not.toContain("<img");
    expect(html.split("&lt;script&gt;alert(1)").length).toBeGreaterThan(8);
  });

  it("never writes a number that is none", () => {
    for (const { outcome } of Object.values(FIXTURES)) {
      expect(renderReportHtml({ outcome })).not.toMatch(/NaN|Infinity|undefined|\[object/);
    }
  });

  it("tells a group as a group and not as a part to buy", () => {
    const html = renderReportHtml({ outcome: FIXTURES.diesel.outcome });
    expect(html).toContain("One of three that this recording cannot tell apart");
    expect(html).toContain("none of them is a part to buy yet");
  });
});
