/** Saturation pressure of water against the verification values of IAPWS-IF97 and values computed from it. */
import { describe, it } from "vitest";
import { saturationPressure, saturationTemperature } from "../src/gas/index.ts";
import type * as saturation from "../src/gas/saturation-pressure.ts";
import { input, recordsNamed } from "./check-records.ts";
import { expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "01-moist-air";

function check(module: Pick<typeof saturation, "saturationPressure">): void {
  for (const row of recordsNamed(TOPIC, "if97.psat.")) {
    expectRecord(module.saturationPressure(input(row, "T_K")) / 1e6, row);
  }
}

describe("iapws2007", () => {
  it("gives the verification values of table 35", () => check({ saturationPressure }));

  it("gives the boiling temperatures of table 36", () => {
    for (const row of recordsNamed(TOPIC, "if97.tsat.")) {
      expectRecord(saturationTemperature(input(row, "p_MPa") * 1e6), row);
    }
  });

  it("gives the saturation pressures from 0 to 60 degC", () => {
    for (const row of recordsNamed(TOPIC, "psat.if97.")) {
      expectRecord(saturationPressure(input(row, "t_degC") + 273.15), row);
    }
  });

  it("lies within 0.32 % of the short Magnus formula of the weather services", () => {
    for (const row of recordsNamed(TOPIC, "psat.magnus.")) {
      const short = row.expected as number;
      expectRecord(saturationPressure(input(row, "t_degC") + 273.15), {
        ...row,
        expected: short,
        tolerance: { type: "relative", value: 0.0032 },
      });
    }
  });

  it("fails once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/gas/saturation-pressure.ts", "0.1202082470247e5", 1e-8, check);
  });
});
