/** The standard atmosphere and the transport properties of air against US Standard Atmosphere 1976 and ISO 2533. */
import { describe, it } from "vitest";
import type * as transport from "../src/gas/air-transport.ts";
import { airConductivity, airViscosity, geopotentialAltitude, standardAtmosphere } from "../src/gas/index.ts";
import type * as atmosphere from "../src/gas/standard-atmosphere.ts";
import { input, recordsNamed } from "./check-records.ts";
import { expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "01-moist-air";

function checkIso2533(module: Pick<typeof atmosphere, "standardAtmosphere">): void {
  for (const row of recordsNamed(TOPIC, "iso2533.H")) {
    const state = module.standardAtmosphere(input(row, "H_m"));
    expectRecord(state.temperature, row, { part: "T_K" });
    expectRecord(state.pressure, row, { part: "p_Pa" });
    expectRecord(state.density, row, { part: "rho_kg_m3" });
  }
}

function checkSutherland(module: Pick<typeof transport, "airViscosity">): void {
  for (const row of recordsNamed(TOPIC, "sutherland.")) expectRecord(module.airViscosity(input(row, "T_K")), row);
}

describe("us1976 and iso2533", () => {
  it("gives the atmosphere of ISO 2533 at geopotential altitudes", () => checkIso2533({ standardAtmosphere }));

  it("gives the tables of 1976 at geometric altitudes", () => {
    for (const row of [...recordsNamed(TOPIC, "us76.table."), ...recordsNamed(TOPIC, "us76.Z.")]) {
      const state = standardAtmosphere(geopotentialAltitude(input(row, "Z_m")));
      expectRecord(state.temperature, row, { part: "T_K" });
      expectRecord(state.pressure, row, { part: "p_Pa" });
      expectRecord(state.density, row, { part: "rho_kg_m3" });
      expectRecord(airViscosity(state.temperature), row, { part: "mu_Pa_s" });
    }
  });

  it("gives Sutherland's viscosity", () => checkSutherland({ airViscosity }));

  it("gives the conductivity of equation (53)", () => {
    for (const row of recordsNamed(TOPIC, "k76.")) expectRecord(airConductivity(input(row, "T_K")), row);
  });

  it("fails once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/gas/standard-atmosphere.ts", "-6.5e-3", 1e-4, checkIso2533);
    await expectCoefficientMatters("src/gas/air-transport.ts", "1.458e-6", 1e-5, checkSutherland);
  });
});
