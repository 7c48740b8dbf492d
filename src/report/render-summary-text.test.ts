import { describe, expect, it } from "vitest";
import { FIXTURES } from "./fixtures/all.ts";
import { LEAK } from "./fixtures/leak.ts";
import { TWO_BANKS } from "./fixtures/two-banks.ts";
import { renderSummaryText } from "./render-summary-text.ts";

const lines = (text: string) => text.trimEnd().split("\n");

describe("renderSummaryText", () => {
  it("begins with the word and the sentence, and says chance and size of each finding", () => {
    const text = renderSummaryText(LEAK, { width: 80, colour: false });
    expect(lines(text)[0]).toBe("LIKELY. Air enters after the meter.");
    expect(text).toContain(" 9 in 10  Air enters after the throttle, 3.5 mm² (2.2 to 5.0)\n");
    expect(text).toContain("6 in 100  Signal offset in the meter");
    expect(text).toContain("Ruled out at 95 %: manifold pressure reading more than 2.5 kPa low or 3 kPa\n  high;");
    expect(text).toContain("Next: Smoke test");
    expect(text).toContain("Not tested: overrun");
  });

  it("puts the warning before everything", () => {
    expect(renderSummaryText(TWO_BANKS, { width: 80, colour: false })).toMatch(
      /^Before anything else: Bank 2 runs lean/,
    );
  });

  it.each(Object.entries(FIXTURES))("keeps %s within the width and a screen", (_, { outcome }) => {
    for (const width of [60, 80, 120]) {
      const text = renderSummaryText(outcome, { width, colour: false });
      expect(Math.max(...lines(text).map((line) => line.length))).toBeLessThanOrEqual(width);
    }
    expect(lines(renderSummaryText(outcome, { width: 80, colour: false })).length).toBeLessThanOrEqual(32);
  });

  it("lists what is most probable first, healthy included", () => {
    const text = renderSummaryText(FIXTURES.healthy.outcome, { width: 80, colour: false });
    expect(text.indexOf("96 in 100  Healthy")).toBeLessThan(text.indexOf("1 in 100  Meter scaled"));
    expect(text.indexOf("96 in 100  Healthy")).toBeGreaterThan(0);
  });

  it("writes control characters only when colour is asked for", () => {
    const control = String.fromCharCode(27);
    expect(renderSummaryText(LEAK, { width: 80, colour: false })).not.toContain(control);
    expect(renderSummaryText(LEAK, { width: 80, colour: true })).toContain(`${control}[1mLIKELY`);
  });
});
