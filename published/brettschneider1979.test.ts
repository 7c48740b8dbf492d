/** Lambda by Brettschneider's equation: exactly balanced gases, the size of the error when the balance differs, five-gas readings. */
import { describe, expect, it } from "vitest";
import type * as lambdaModule from "../src/engine/exhaust-lambda.ts";
import { combustionWaterPerDryGas, exhaustLambda, idealExhaust, toWetBasis } from "../src/engine/index.ts";
import { type CheckRecord, input, recordsNamed } from "./check-records.ts";
import { expectDigits, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "07-stoichiometry";

function gasOf(row: CheckRecord) {
  const percent = (name: string): number => (name in row.inputs ? input(row, name) / 100 : 0);
  const hydrocarbons = "HC_ppm_hexane" in row.inputs ? input(row, "HC_ppm_hexane") / 1e6 : 0;
  return {
    carbonDioxide: percent("CO2_pct"),
    carbonMonoxide: percent("CO_pct"),
    oxygen: percent("O2_pct"),
    nitricOxide: percent("NO_pct"),
    hydrocarbons,
    carbonPerHydrocarbon: 6,
  };
}

const fuelOf = (row: CheckRecord) => ({ hydrogenPerCarbon: input(row, "Hcv"), oxygenPerCarbon: input(row, "Ocv") });

function check(module: Pick<typeof lambdaModule, "exhaustLambda">, prefix: string): void {
  for (const row of recordsNamed(TOPIC, prefix)) expectRecord(module.exhaustLambda(gasOf(row), fuelOf(row)), row);
}

describe("brettschneider1979", () => {
  it("is exact on a gas in water-gas balance at 3.5", () => check({ exhaustLambda }, "brett.exact."));
  it("is 0.3 % off at lambda 0.8 on a gas in balance at 3.7", () => check({ exhaustLambda }, "brett.k37."));
  it("gives lambda of five-gas readings", () => check({ exhaustLambda }, "brett.5gas."));

  it("gives the same lambda wet and dry as long as all gases are on one basis, and another one when they are mixed", () => {
    const fuel = { hydrogenPerCarbon: 1.87, oxygenPerCarbon: 0 };
    for (const lambda of [0.85, 1, 1.1]) {
      const dry = idealExhaust(lambda, fuel, { basis: "dry", waterGasConstant: 3.5 });
      const none = { nitricOxide: 0, hydrocarbons: 0, carbonPerHydrocarbon: 6 };
      const gas = { ...none, carbonDioxide: dry.carbonDioxide, carbonMonoxide: dry.carbonMonoxide, oxygen: dry.oxygen };
      const water = combustionWaterPerDryGas(gas, fuel);
      const wet = {
        ...none,
        carbonDioxide: toWetBasis(gas.carbonDioxide, water),
        carbonMonoxide: toWetBasis(gas.carbonMonoxide, water),
        oxygen: toWetBasis(gas.oxygen, water),
      };
      expectDigits(exhaustLambda(gas, fuel), lambda, 12);
      expectDigits(exhaustLambda(wet, fuel), lambda, 12);
      const ideal = idealExhaust(lambda, fuel, { basis: "wet", waterGasConstant: 3.5 });
      expectDigits(wet.carbonDioxide, ideal.carbonDioxide, 12, "water of combustion");
    }
    const lean = {
      carbonDioxide: 0.13,
      carbonMonoxide: 0,
      oxygen: 0.03,
      nitricOxide: 0,
      hydrocarbons: 0,
      carbonPerHydrocarbon: 6,
    };
    const mixed = { ...lean, oxygen: toWetBasis(lean.oxygen, combustionWaterPerDryGas(lean, fuel)) };
    expect(exhaustLambda(mixed, fuel)).toBeLessThan(exhaustLambda(lean, fuel) - 0.01);
  });

  it("fails once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters<typeof lambdaModule>("src/engine/exhaust-lambda.ts", "= 3.5", 1e-6, (module) =>
      check(module, "brett.exact."),
    );
  });
});
