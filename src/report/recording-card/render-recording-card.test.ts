import { describe, expect, it } from "vitest";
import { recordingCard } from "../../job/standard-recording/recording-card.ts";
import { renderRecordingCardHtml } from "./render-recording-card-html.tsx";
import { renderRecordingCardText } from "./render-recording-card-text.ts";

const card = recordingCard("0.0.0");

describe("the card of the standard recording", () => {
  const html = renderRecordingCardHtml({ card });
  it("is one page with every part, its time, what it leaves open, and the cautions", () => {
    for (const part of card.parts) {
      expect(html).toContain(part.title);
      expect(html).toContain(part.leavesOpen[0]!.title.replaceAll("'", "&#x27;"));
    }
    expect(html).toContain("Motor-driven throttles trap fingers");
    expect(html.match(/class="tick"/g)).toHaveLength(card.parts.length + card.before.length + card.channels.length);
  });

  it("fetches nothing and runs nothing", () => {
    expect(html).not.toMatch(/<script|https?:|url\(/);
  });

  it.each([60, 80, 110])("keeps to %i columns as text, in the order of the parts", (width) => {
    const text = renderRecordingCardText(card, { width });
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(width);
    const places = card.parts.map((part) => text.indexOf(part.title));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places[0]).toBeGreaterThan(0);
  });
});
