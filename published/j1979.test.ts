/** Absolute and calculated load against SAE J1979. */
import { describe, it } from "vitest";
import type * as loadModule from "../src/engine/engine-load.ts";
import { absoluteLoad, calculatedLoad, massFlowOfAbsoluteLoad } from "../src/engine/index.ts";
import { idealMoistAirDensity, moistAirDensity } from "../src/gas/index.ts";
import { input, record, recordsNamed } from "./check-records.ts";
import { expectDigits, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

function check(module: Pick<typeof loadModule, "absoluteLoad">): void {
  for (const row of recordsNamed("08-obd-and-bus", "load.abs.").filter((r) => "maf_g_s" in r.inputs)) {
    const load = module.absoluteLoad({
      massFlow: input(row, "maf_g_s") / 1000,
      displacement: input(row, "displacement_l") / 1000,
      engineSpeed: input(row, "rpm") / 60,
    });
    expectRecord(load * 100, row);
  }
}

describe("j1979", () => {
  it("gives the absolute load", () => check({ absoluteLoad }));

  it("takes 1.184 g/L as air at 25 degC and one atmosphere", () => {
    const air = { pressure: 101_325, temperature: 298.15, humidityRatio: 0 };
    expectRecord(idealMoistAirDensity(air), record("08-obd-and-bus", "rho.1184"));
    expectDigits(
      massFlowOfAbsoluteLoad({ absoluteLoad: 1, displacement: 0.002, engineSpeed: 1 }),
      0.001 * moistAirDensity(air),
      3,
    );
  });

  it("gives a calculated load of one at full load whatever the weather, as the definition scales full load by it", () => {
    const weather = { barometer: 84_500, ambientTemperature: 308 };
    const fullLoadFlow = 0.16;
    const inThisWeather = fullLoadFlow * (weather.barometer / (29.92 * 3386.388640341)) * Math.sqrt(298 / 308);
    expectDigits(calculatedLoad({ massFlow: inThisWeather, fullLoadFlow, ...weather }), 1, 14);
  });

  it("fails once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/engine/engine-load.ts", "1.184", 1e-8, check);
  });
});
