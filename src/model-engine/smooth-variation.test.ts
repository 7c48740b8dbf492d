import { describe, expect, it } from "vitest";
import { seededRandom } from "../numerics/index.ts";
import { drawVariation, NO_VARIATION, variationAt } from "./smooth-variation.ts";

const N = 3000;
const draws = Array.from({ length: N }, (_, seed) => drawVariation(seededRandom(seed), 0.02, [0.8]));
const mean = (f: (i: number) => number) => draws.reduce((sum, _, i) => sum + f(i), 0) / N;

describe("variationAt", () => {
  it("has the stated standard deviation at any place, within four standard errors", () => {
    for (const x of [-7, -5, -2]) {
      const variance = mean((i) => variationAt(draws[i]!, x) ** 2);
      expect(Math.abs(variance / 0.02 ** 2 - 1)).toBeLessThan(4 * Math.sqrt(2 / N));
    }
  });

  it("is correlated over its length scale as exp(-d^2/(2 l^2)), and no longer far away", () => {
    for (const [distance, expected] of [
      [0.4, Math.exp(-0.125)],
      [0.8, Math.exp(-0.5)],
      [4, 0],
    ] as const) {
      const covariance = mean((i) => variationAt(draws[i]!, -5) * variationAt(draws[i]!, -5 + distance));
      expect(Math.abs(covariance / 0.02 ** 2 - expected)).toBeLessThan(4 * Math.sqrt(2 / N));
    }
  });

  it("is nothing where nothing was drawn", () => {
    expect(variationAt(NO_VARIATION, 3, 4)).toBe(0);
  });
});
