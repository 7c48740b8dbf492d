import { expect, it } from "vitest";
import { logNormalCdf, logOrthantProbability } from "./index.ts";

it("is the normal distribution function for one quantity", () => {
  expect(logOrthantProbability(Float64Array.of(-3), Float64Array.of(4))).toBeCloseTo(logNormalCdf(-1.5), 12);
});

it("is the sum for independent quantities, also far in the tail", () => {
  const p = logOrthantProbability(Float64Array.of(-8, 1, 0.3), Float64Array.of(1, 0, 0, 0, 4, 0, 0, 0, 1));
  expect(p).toBeCloseTo(logNormalCdf(-8) + logNormalCdf(0.5) + logNormalCdf(0.3), 8);
});

// Source: Sheppard's theorem on the bivariate orthant, and its extension to three (closed forms).
it("meets Sheppard's orthant for two and three correlated quantities within 4 %", () => {
  for (const rho of [-0.8, -0.4, 0.2, 0.5, 0.9]) {
    const two = Math.exp(logOrthantProbability(new Float64Array(2), Float64Array.of(1, rho, rho, 1)));
    expect(Math.abs(two / (0.25 + Math.asin(rho) / (2 * Math.PI)) - 1)).toBeLessThan(0.04);
  }
  for (const rho of [-0.3, 0.3, 0.7]) {
    const cov = Float64Array.of(1, rho, rho, rho, 1, rho, rho, rho, 1);
    const three = Math.exp(logOrthantProbability(new Float64Array(3), cov));
    expect(Math.abs(three / (0.125 + (3 * Math.asin(rho)) / (4 * Math.PI)) - 1)).toBeLessThan(0.04);
  }
});

it("falls when a mean falls", () => {
  const cov = Float64Array.of(1, 0.5, 0.5, 1);
  const at = (m: number) => logOrthantProbability(Float64Array.of(m, 0.2), cov);
  expect(at(-6)).toBeLessThan(at(-3));
  expect(at(-3)).toBeLessThan(at(0));
  expect(at(0)).toBeLessThan(at(3));
});
