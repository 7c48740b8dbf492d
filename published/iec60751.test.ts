/** Platinum resistance against IEC 60751. */
import { describe, it } from "vitest";
import { platinumResistanceRatio, platinumTemperature } from "../src/meters/index.ts";
import type * as platinum from "../src/meters/platinum.ts";
import { expected, input, recordsNamed } from "./check-records.ts";
import { expectDigits, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

function check(module: Pick<typeof platinum, "platinumResistanceRatio">): void {
  for (const row of recordsNamed("05-hot-wire", "pt100.")) {
    expectRecord(100 * module.platinumResistanceRatio(input(row, "t_degC") + 273.15), row);
  }
}

describe("iec60751", () => {
  it("gives table 1 from -190 to 850 degC", () => check({ platinumResistanceRatio }));
  it("is undone by the inverse", () => {
    for (const row of recordsNamed("05-hot-wire", "pt100.")) {
      const kelvin = platinumTemperature(expected(row) / 100);
      expectDigits(kelvin, input(row, "t_degC") + 273.15, 3.85, row.id);
    }
  });
  it("fails once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/meters/platinum.ts", "3.9083e-3", 1e-4, check);
  });
});
