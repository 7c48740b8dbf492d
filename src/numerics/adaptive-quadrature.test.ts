import { expect, it } from "vitest";
import { densityNodes, densityQuantile, integrateExponential, normalCdf } from "./index.ts";

// Closed form: the integral of exp(-((x-m)/s)^2/2) is s sqrt(2 pi); its quantiles are m + s z.
it("integrates a Gaussian much narrower than the interval within 1 %", () => {
  for (const s of [0.3, 0.03, 0.003, 0.001]) {
    for (const m of [0.137, 0.5, 0.9311]) {
      const d = integrateExponential((x) => -0.5 * ((x - m) / s) ** 2, 0, 1);
      const inside = normalCdf((1 - m) / s) - normalCdf(-m / s);
      expect(Math.abs(Math.exp(d.logIntegral) / (inside * s * Math.sqrt(2 * Math.PI)) - 1)).toBeLessThan(0.01);
      if (s < 0.01) {
        expect(Math.abs(densityQuantile(d, 0.05) - (m - 1.6449 * s))).toBeLessThan(0.03 * s);
        expect(Math.abs(densityQuantile(d, 0.95) - (m + 1.6449 * s))).toBeLessThan(0.03 * s);
      }
    }
  }
});

it("gives nodes whose weights sum to one and whose mean is the density's", () => {
  const nodes = densityNodes(integrateExponential((x) => -x, 0, 20, 65));
  expect(nodes.reduce((sum, n) => sum + n.weight, 0)).toBeCloseTo(1, 4);
  expect(nodes.reduce((sum, n) => sum + n.weight * n.x, 0)).toBeCloseTo(1, 1);
});

it("says minus infinity where the integrand vanishes", () => {
  expect(integrateExponential(() => -Infinity, 0, 1).logIntegral).toBe(-Infinity);
});
