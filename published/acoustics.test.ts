/** Helmholtz and quarter-wave resonances against textbook arithmetic (Kinsler and Frey). */
import { describe, it } from "vitest";
import type * as acoustics from "../src/gas/acoustics.ts";
import { helmholtzFrequency, quarterWaveFrequency } from "../src/gas/index.ts";
import { input, recordsNamed } from "./check-records.ts";
import { expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "11-gas-dynamics";

function checkHelmholtz(module: Pick<typeof acoustics, "helmholtzFrequency">): void {
  for (const row of recordsNamed(TOPIC, "helmholtz.").filter((r) => "V_m3" in r.inputs)) {
    const resonator = {
      speedOfSound: input(row, "c"),
      neckArea: input(row, "A_m2"),
      effectiveLength: input(row, "Leff_m"),
      volume: input(row, "V_m3"),
    };
    expectRecord(module.helmholtzFrequency(resonator), row);
  }
}

function checkQuarterWave(module: Pick<typeof acoustics, "quarterWaveFrequency">): void {
  for (const row of recordsNamed(TOPIC, "quarter.")) {
    for (const [i, value] of (row.expected as number[]).entries()) {
      expectRecord(module.quarterWaveFrequency(input(row, "L_m"), input(row, "c"), i + 1), { ...row, expected: value });
    }
  }
}

describe("kinsler2000", () => {
  it("gives the Helmholtz frequency", () => checkHelmholtz({ helmholtzFrequency }));
  it("gives the odd quarter-wave resonances", () => checkQuarterWave({ quarterWaveFrequency }));
  it("fails once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/gas/acoustics.ts", "4", 1e-8, checkQuarterWave);
  });
});
