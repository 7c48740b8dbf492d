import { describe, expect, it } from "vitest";
import { roundAxis, tightAxis } from "./xy-chart.tsx";

const format = String;

describe("axes of a chart", () => {
  it("end on round numbers that take in every value", () => {
    const axis = roundAxis([-0.113, 0.2016], 6, format);
    expect(axis.ticks[0]).toBeCloseTo(-0.2, 9);
    expect(axis.ticks.at(-1)).toBeCloseTo(0.3, 9);
    expect([axis.scale(axis.ticks[0]!), axis.scale(axis.ticks.at(-1)!)].map((s) => Math.round(s * 1e9) / 1e9)).toEqual([
      0, 1,
    ]);
    expect(axis.ticks.some((tick) => tick === 0)).toBe(true);
  });

  it("leave a little air where they end with the values", () => {
    const axis = tightAxis([1, 4], 8, format);
    expect(axis.scale(1)).toBeGreaterThan(0.01);
    expect(axis.scale(4)).toBeLessThan(0.99);
    for (const tick of axis.ticks) expect(axis.scale(tick)).toBeGreaterThanOrEqual(0);
  });

  it("place a single value rather than nowhere", () => {
    for (const [axis, value] of [
      [roundAxis([5], 6, format), 5],
      [tightAxis([5], 6, format), 5],
      [roundAxis([0], 6, format), 0],
    ] as const) {
      expect(axis.scale(value)).toBeGreaterThan(0);
      expect(axis.scale(value)).toBeLessThan(1);
      expect(axis.ticks.length).toBeGreaterThan(0);
    }
  });
});
