/** Properties of air against the tables of two heat transfer books. */
import { describe, it } from "vitest";
import type * as transport from "../src/gas/air-transport.ts";
import { airConductivity, airViscosity, MOIST_AIR_RANGE, moistAirDensity } from "../src/gas/index.ts";
import { type CheckRecord, expected, input, recordsNamed } from "./check-records.ts";
import { expectDigits, expectInside, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

/** Conductivities of different tables differ by more than two digits can say. */
function expectAround(conductivity: number, row: CheckRecord, scatter: number): void {
  const published = expected(row, "k");
  expectInside(conductivity, [published * (1 - scatter), published * (1 + scatter)], row.id);
}

const TOPIC = "01-moist-air";

describe("these checks", () => {
  it("fail once Sutherland's constants move by ten tolerances", async () => {
    await expectCoefficientMatters<typeof transport>("src/gas/air-transport.ts", "1.458e-6", 0.1, (module) => {
      for (const row of recordsNamed(TOPIC, "cengel.air.")) {
        expectRecord(module.airViscosity(input(row, "t_degC") + 273.15), row, { part: "mu" });
      }
    });
  });
});

describe("cengel2003", () => {
  it("agrees in density and viscosity, and in conductivity to 3.5 %, which separates the table from newer correlations", () => {
    for (const row of recordsNamed(TOPIC, "cengel.air.")) {
      const temperature = input(row, "t_degC") + 273.15;
      expectRecord(moistAirDensity({ pressure: input(row, "p_Pa"), temperature, humidityRatio: 0 }), row, {
        part: "rho",
      });
      expectRecord(airViscosity(temperature), row, { part: "mu" });
      expectAround(airConductivity(temperature), row, 0.035);
    }
  });
});

describe("incropera2002", () => {
  it("agrees in viscosity to 1 % up to 450 K and 1.2 % at 500 K; its densities are those of 1 bar", () => {
    for (const row of recordsNamed(TOPIC, "incropera.A4.")) {
      const temperature = input(row, "T_K");
      if (temperature <= 450) expectRecord(airViscosity(temperature), row, { part: "mu" });
      else expectInside(airViscosity(temperature) / expected(row, "mu"), [0.988, 1.012], row.id);
      if (temperature <= MOIST_AIR_RANGE.temperature.high) {
        const density = moistAirDensity({ pressure: 100_000, temperature, humidityRatio: 0 });
        expectDigits(density, expected(row, "rho"), 2.8, row.id);
      }
      expectAround(airConductivity(temperature), row, 0.025);
    }
  });
});
