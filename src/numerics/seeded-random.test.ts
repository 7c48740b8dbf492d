import { describe, expect, it } from "vitest";
import { seededRandom } from "./seeded-random.ts";

const draw = (n: number, next: () => number) => Array.from({ length: n }, next);

describe("seededRandom", () => {
  it("gives the same numbers to the bit for the same seed, and others for another", () => {
    const a = seededRandom(7);
    const b = seededRandom(7);
    expect(draw(50, a.normal)).toEqual(draw(50, b.normal));
    expect(draw(5, seededRandom(8).uniform)).not.toEqual(draw(5, seededRandom(7).uniform));
  });

  it("forks a stream that does not depend on what was drawn before", () => {
    const early = seededRandom(7).fork("recorder");
    const parent = seededRandom(7);
    draw(100, parent.uniform);
    expect(draw(20, parent.fork("recorder").uniform)).toEqual(draw(20, early.uniform));
    expect(draw(3, seededRandom(7).fork("a").uniform)).not.toEqual(draw(3, seededRandom(7).fork("b").uniform));
  });

  it("draws normals with the moments of a standard normal", () => {
    const n = 40_000;
    const x = draw(n, seededRandom(11).normal);
    const moment = (k: number) => x.reduce((sum, v) => sum + v ** k, 0) / n;
    // Four standard errors of each sample moment: sqrt(1/n), sqrt(2/n), sqrt(15/n), sqrt(96/n).
    expect(Math.abs(moment(1))).toBeLessThan(4 * Math.sqrt(1 / n));
    expect(Math.abs(moment(2) - 1)).toBeLessThan(4 * Math.sqrt(2 / n));
    expect(Math.abs(moment(3))).toBeLessThan(4 * Math.sqrt(15 / n));
    expect(Math.abs(moment(4) - 3)).toBeLessThan(4 * Math.sqrt(96 / n));
  });

  it("draws integers over the whole range, both ends included", () => {
    const random = seededRandom(3);
    expect(new Set(draw(400, () => random.integer(2, 5)))).toEqual(new Set([2, 3, 4, 5]));
  });
});
