/** Volumetric efficiency of an engine on an air box: two worked examples of an engines textbook, recomputed. */
import { describe, it } from "vitest";
import { airFromFuel, airFuelRatioOfComposition, atomsOfMassShares, displacementFlow } from "../src/engine/index.ts";
import { incompressibleOrificeFlow } from "../src/gas/index.ts";
import type * as restriction from "../src/gas/restriction.ts";
import { expected, input, record } from "./check-records.ts";
import { expectDigits, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "06-speed-density";

function check(module: Pick<typeof restriction, "incompressibleOrificeFlow">): void {
  const water = record(TOPIC, "ganesan.17.14");
  const density = input(water, "p_Pa") / (input(water, "R") * input(water, "T_K"));
  const opening = {
    dischargeCoefficient: input(water, "Cd"),
    area: (Math.PI / 4) * input(water, "orifice_d_m") ** 2,
    density,
    pressureDrop: 1000 * input(water, "g") * input(water, "head_m_water"),
  };
  const volume = module.incompressibleOrificeFlow(opening) / density;
  const swept = displacementFlow(sweptVolume(water), input(water, "rpm") / 60);
  expectRecord(volume * 60, water, { part: "Va_m3_min" });
  expectRecord(swept * 60, water, { part: "Vs_m3_min" });
  expectRecord((volume / swept) * 100, water, { part: "eta_v_pct" });
}

function sweptVolume(row: Parameters<typeof input>[0]): number {
  return input(row, "cylinders") * (Math.PI / 4) * input(row, "bore_m") ** 2 * input(row, "stroke_m");
}

describe("ganesan2012", () => {
  it("gives the efficiency from an orifice under a head of water", () => check({ incompressibleOrificeFlow }));

  it("gives efficiency, air-fuel ratio and excess air from an orifice under a head of mercury", () => {
    const row = record(TOPIC, "ganesan.17.18");
    const density = input(row, "rho_air");
    const massFlow = incompressibleOrificeFlow({
      dischargeCoefficient: input(row, "Cd"),
      area: (Math.PI / 4) * input(row, "orifice_d_m") ** 2,
      density,
      pressureDrop: input(row, "rho_Hg") * 9.81 * input(row, "head_m_Hg"),
    });
    const expectedFlow = (row.expected as { mdot_air_kg_s: number }).mdot_air_kg_s;
    const volume = massFlow / density;
    expectRecord(volume, row, { part: "Va_m3_s" });
    expectRecord((volume / displacementFlow(sweptVolume(row), input(row, "rpm") / 60)) * 100, row, {
      part: "eta_v_pct",
    });
    const fuelFlow = (input(row, "fuel_cc") * 1e-6 * input(row, "fuel_rho")) / input(row, "fuel_time_s");
    expectRecord(fuelFlow * 3600, row, { part: "mdot_fuel_kg_h" });
    const stoichiometric = (row.expected as { AFR_stoich: number }).AFR_stoich;
    // The book takes the density of air at 300 K for the mass; lambda follows from its own mass flow.
    const lambda = expectedFlow / (fuelFlow * stoichiometric);
    expectRecord((lambda - 1) * 100, row, { part: "excess_air_pct" });
    const air = airFromFuel({ fuelFlow, lambda, stoichiometricAirFuelRatio: stoichiometric });
    expectRecord(air / fuelFlow, row, { part: "AFR" });
  });

  it("gives the stoichiometric ratio from the analysis by mass, within the book's rounded atomic weights and air", () => {
    const row = record(TOPIC, "ganesan.17.18");
    const atoms = atomsOfMassShares({ carbon: input(row, "C"), hydrogen: input(row, "H"), oxygen: 0 });
    const ours = airFuelRatioOfComposition(atoms.hydrogenPerCarbon, atoms.oxygenPerCarbon);
    expectDigits(ours, expected(row, "AFR_stoich"), 2.4);
    const ethanol = atomsOfMassShares({ carbon: 24.022, hydrogen: 6.048, oxygen: 16 });
    expectDigits(ethanol.hydrogenPerCarbon, 3, 14);
    expectDigits(ethanol.oxygenPerCarbon, 0.5, 14);
  });

  it("fails once the 2 of Bernoulli's equation moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/gas/restriction.ts", "1 / (2", 2e-3, check);
  });
});
