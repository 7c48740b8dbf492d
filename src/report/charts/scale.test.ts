import { describe, expect, it } from "vitest";
import { linearScale, linearTicks, logScale, logTicks, timeTicks } from "./scale.ts";

describe("scales", () => {
  it("place the ends at 0 and 1 and equal ratios at equal lengths", () => {
    expect([2, 4].map(linearScale(2, 4))).toEqual([0, 1]);
    const x = logScale(3, 150);
    expect([x(3), x(150)]).toEqual([0, 1]);
    expect(x(20) - x(10)).toBeCloseTo(x(100) - x(50), 12);
  });

  it("put a value of no span in the middle rather than nowhere", () => {
    expect(linearScale(5, 5)(5)).toBe(0.5);
  });
});

describe("ticks", () => {
  it("of a logarithmic axis are 1, 2 and 5 within its ends", () => {
    expect(logTicks(3, 150)).toEqual([5, 10, 20, 50, 100]);
    expect(logTicks(0.9, 8_000)).toEqual([1, 5, 10, 50, 100, 500, 1000, 5000]);
  });

  it("of a linear axis are round and no more than asked for", () => {
    expect(linearTicks(0, 10, 5)).toEqual([0, 2, 4, 6, 8, 10]);
    expect(linearTicks(-0.17, 0.04, 8).length).toBeLessThanOrEqual(8);
    expect(linearTicks(1, 1, 4)).toEqual([1]);
  });

  it("of time follow the clock", () => {
    expect(timeTicks(553, 7)).toEqual([0, 120, 240, 360, 480]);
    expect(timeTicks(0, 7)).toEqual([0]);
  });
});
