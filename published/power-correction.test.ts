/** Power correction factors against arithmetic on the formulas of SAE J1349, ISO 1585 and DIN 70020 as quoted. */
import { describe, it } from "vitest";
import {
  powerCorrectionDin70020,
  powerCorrectionIso1585Compression,
  powerCorrectionIso1585Spark,
  powerCorrectionJ1349,
} from "../src/engine/index.ts";
import type * as correction from "../src/engine/power-correction.ts";
import { input, record, recordsNamed } from "./check-records.ts";
import { expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "06-speed-density";

function checkJ1349(module: Pick<typeof correction, "powerCorrectionJ1349">): void {
  for (const row of recordsNamed(TOPIC, "j1349.").filter((r) => "Pd_mbar" in r.inputs)) {
    const air = { dryPressure: input(row, "Pd_mbar") * 100, temperature: input(row, "Tc_degC") + 273.15 };
    expectRecord(module.powerCorrectionJ1349(air), row);
  }
}

function checkIso1585(module: Pick<typeof correction, "powerCorrectionIso1585Spark">): void {
  const row = record(TOPIC, "iso1585.si");
  const air = { dryPressure: input(row, "ps_kPa") * 1000, temperature: input(row, "T_K") };
  expectRecord(module.powerCorrectionIso1585Spark(air), row);
}

describe("j1349", () => {
  it("gives the factors of the June 1990 formula", () => checkJ1349({ powerCorrectionJ1349 }));
});

describe("iso1585", () => {
  it("gives the spark-ignition factor", () => checkIso1585({ powerCorrectionIso1585Spark }));

  it("gives air factor, engine factor and correction of a naturally aspirated diesel", () => {
    const row = record(TOPIC, "iso1585.ci");
    const result = powerCorrectionIso1585Compression({
      dryPressure: input(row, "ps_kPa") * 1000,
      temperature: input(row, "T_K"),
      fuelPerLitreAndCycle: input(row, "qc"),
      charging: "natural",
    });
    expectRecord(result.airFactor, row, { part: "fa" });
    expectRecord(result.engineFactor, row, { part: "fm" });
    expectRecord(result.correction, row, { part: "alpha_c" });
  });
});

function checkDin70020(module: Pick<typeof correction, "powerCorrectionDin70020">): void {
  const row = record(TOPIC, "din70020");
  expectRecord(module.powerCorrectionDin70020(input(row, "p_mbar") * 100, input(row, "t_degC") + 273.15), row);
}

describe("din70020", () => {
  it("gives the factor", () => checkDin70020({ powerCorrectionDin70020 }));
});

describe("these checks", () => {
  it("fail once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/engine/power-correction.ts", "1.18", 1e-5, checkJ1349);
    await expectCoefficientMatters("src/engine/power-correction.ts", "** 1.2", 1e-3, checkIso1585);
    await expectCoefficientMatters("src/engine/power-correction.ts", "101_300", 1e-4, checkDin70020);
  });
});
