/** Humidity of intake air against the worked example of 40 CFR 1066.615. */
import { describe, it } from "vitest";
import type * as humidity from "../src/gas/humidity.ts";
import { humidityRatioFromVapourPressure } from "../src/gas/index.ts";
import { AIR_WATER_MOLAR_RATIO } from "../src/quantities/index.ts";
import { expected, input, record } from "./check-records.ts";
import { expectDigits, expectFailure } from "./matched-digits.ts";

function check(module: Pick<typeof humidity, "humidityRatioFromVapourPressure">): void {
  const row = record("01-moist-air", "cfr1066.615.H");
  const vapour = input(row, "pd_kPa") * 1000 * input(row, "RH");
  const ours = module.humidityRatioFromVapourPressure(vapour, input(row, "patmos_kPa") * 1000) * 1000;
  expectDigits(ours, expected(row), 5);
  const theirRatio = input(row, "Mair_g_mol") / input(row, "MH2O_g_mol");
  expectDigits((ours * AIR_WATER_MOLAR_RATIO) / theirRatio, expected(row), 5.5);
}

describe("cfr1066", () => {
  it("gives the specific humidity; its molar mass of air differs from ours in the sixth digit", () =>
    check({ humidityRatioFromVapourPressure }));

  it("fails once the pressure moves by ten tolerances", () => {
    expectFailure(() =>
      check({
        humidityRatioFromVapourPressure: (vapour, pressure) =>
          humidityRatioFromVapourPressure(vapour, pressure * 1.0001),
      }),
    );
  });
});
