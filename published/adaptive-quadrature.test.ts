/** Integrals of narrow densities against closed forms. */
import { describe, it } from "vitest";
import { densityQuantile, integrateExponential, normalQuantile } from "../src/numerics/index.ts";
import { expectDigits, expectFailure } from "./matched-digits.ts";

describe("adaptive quadrature", () => {
  for (const width of [0.2, 0.03, 1e-3]) {
    it(`integrates a Gaussian of width ${width} of the interval to one per cent, quantiles to a hundredth of the width`, () => {
      const centre = 0.437;
      const density = integrateExponential((x) => -0.5 * ((x - centre) / width) ** 2, 0, 1, 65);
      // the part of a wide Gaussian beyond the interval is left out by both
      if (width < 0.1) {
        expectDigits(Math.exp(density.logIntegral), width * Math.sqrt(2 * Math.PI), 2);
        for (const p of [0.05, 0.5, 0.95]) {
          const off = (densityQuantile(density, p) - centre) / width - normalQuantile(p);
          expectDigits(1 + off, 1, 2, `quantile ${p}`);
        }
      }
      expectDigits(densityQuantile(density, 0.5), centre, 2);
    });
  }

  it("integrates an exponential in closed form", () => {
    const density = integrateExponential((x) => -3 * x, 0, 2);
    expectDigits(Math.exp(density.logIntegral), -Math.expm1(-6) / 3, 6);
    expectDigits(densityQuantile(density, 0.5), -Math.log1p(0.5 * Math.expm1(-6)) / 3, 6);
    const steeper = integrateExponential((x) => -3.00003 * x, 0, 2);
    expectFailure(() => expectDigits(Math.exp(steeper.logIntegral), -Math.expm1(-6) / 3, 6));
  });
});
