/** Humidity and moist-air volume against the tables of the ASHRAE Handbook, Fundamentals (2017), chapter 1. */
import { describe, it } from "vitest";
import type * as humidity from "../src/gas/humidity.ts";
import {
  humidityRatioFromDewPoint,
  humidityRatioFromRelativeHumidity,
  moistAirDensity,
  saturationPressure,
} from "../src/gas/index.ts";
import type * as saturation from "../src/gas/saturation-pressure.ts";
import { expected, input, record, recordsNamed } from "./check-records.ts";
import { expectDigits, expectFailure, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "01-moist-air";
const kelvin = (row: Parameters<typeof input>[0]): number => input(row, "t_degC") + 273.15;

function checkSaturation(module: Pick<typeof saturation, "saturationPressure">): void {
  for (const row of recordsNamed(TOPIC, "psat.ashrae.")) expectRecord(module.saturationPressure(kelvin(row)), row);
}

function checkHumidity(module: Pick<typeof humidity, "humidityRatioFromRelativeHumidity">): void {
  for (const row of recordsNamed(TOPIC, "ws.ashrae.")) {
    const state = { relativeHumidity: 1, temperature: kelvin(row), pressure: input(row, "p_Pa") };
    const digits = input(row, "t_degC") <= 30 ? 3 : 2;
    expectDigits(module.humidityRatioFromRelativeHumidity(state), expected(row), digits, row.id);
  }
}

describe("ashrae2017", () => {
  it("gives saturation over ice and over water, table 3", () => checkSaturation({ saturationPressure }));

  it("gives the humidity ratio of saturated air, table 2, to 0.1 % up to 30 degC and 1 % at 50 degC", () => {
    checkHumidity({ humidityRatioFromRelativeHumidity });
    for (const row of recordsNamed(TOPIC, "ws.ashrae.")) {
      expectRecord(humidityRatioFromDewPoint(kelvin(row), input(row, "p_Pa")), row);
    }
  });

  it("gives the specific volume of dry air, table 2", () => {
    const row = record(TOPIC, "ashrae.dryvol25");
    const air = { pressure: input(row, "p_Pa"), temperature: kelvin(row), humidityRatio: 0 };
    expectDigits(1 / moistAirDensity(air), expected(row), 4, row.id);
  });

  it("gives the density of a moist mixture within its departure from the ideal gas, 0.05 %", () => {
    const row = record(TOPIC, "moist.30C");
    const air = { pressure: input(row, "p_Pa"), temperature: kelvin(row), humidityRatio: input(row, "W") };
    expectDigits(moistAirDensity(air), expected(row), 3.3, row.id);
  });

  it("fails once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/gas/saturation-pressure.ts", "6.3925247", 1e-3, checkSaturation);
    // the enhancement is that of CIPM-2007, moved in picard2008.test.ts; here all of it
    for (const scale of [1.01, 0.99]) {
      const moved = (state: humidity.RelativeHumidityState) => scale * humidityRatioFromRelativeHumidity(state);
      expectFailure(() => checkHumidity({ humidityRatioFromRelativeHumidity: moved }));
    }
  });
});
