/** Second virial coefficient of dry air against table 1 of Hyland and Wexler (1983), as quoted in a public test suite. */
import { describe, it } from "vitest";
import { dryAirVirial } from "../src/gas/index.ts";
import type * as virial from "../src/gas/virial-coefficients.ts";
import { expectDigits } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

/** K, cm3/mol; printed to 0.01 cm3/mol */
const TABLE_1 = [
  [173.15, -55.94],
  [273.15, -13.15],
  [373.15, 3.72],
  [473.15, 12.31],
] as const;

function check(module: Pick<typeof virial, "dryAirVirial">): void {
  for (const [temperature, published] of TABLE_1) {
    const digits = -Math.log10(0.01 / Math.abs(published));
    expectDigits(module.dryAirVirial(temperature) * 1e6, published, digits, `${temperature} K`);
  }
}

describe("hyland1983", () => {
  it("gives table 1", () => check({ dryAirVirial }));
  it("fails once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/gas/virial-coefficients.ts", "34.9568", 5e-3, check);
  });
});
