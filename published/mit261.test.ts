/** Ideal exhaust composition against the script of a public engines course (MIT OCW 2.61), water-gas constant 3.7. */
import { describe, it } from "vitest";
import type * as composition from "../src/engine/exhaust-composition.ts";
import { idealExhaust } from "../src/engine/index.ts";
import { input, recordsNamed } from "./check-records.ts";
import { expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const GASES = {
  CO: "carbonMonoxide",
  H2: "hydrogen",
  CO2: "carbonDioxide",
  H2O: "water",
  O2: "oxygen",
  N2: "nitrogen",
} as const;

function check(module: Pick<typeof composition, "idealExhaust">): void {
  for (const row of recordsNamed("07-stoichiometry", "exhaust.mit.")) {
    const fuel = { hydrogenPerCarbon: 1.87, oxygenPerCarbon: 0 };
    for (const basis of ["wet", "dry"] as const) {
      const waterGasConstant = input(row, "water_gas_K");
      const ours = module.idealExhaust(input(row, "lam"), fuel, { basis, waterGasConstant });
      const published = (row.expected as { [b: string]: { [gas: string]: number } })[basis] ?? {};
      for (const [gas, fraction] of Object.entries(published)) {
        expectRecord(ours[GASES[gas as keyof typeof GASES]], { ...row, expected: fraction }, { scale: 1 });
      }
    }
  }
}

describe("mit261", () => {
  it("is reproduced wet and dry from lambda 0.7 to 1.4", () => check({ idealExhaust }));
  it("fails once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/engine/exhaust-composition.ts", "= 3.773", 1e-4, check);
  });
});
