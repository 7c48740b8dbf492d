/** Density of moist air against CIPM-2007 (Picard et al. 2008) and what was computed and tabulated from it. */
import { describe, it } from "vitest";
import type * as approximation from "../src/gas/approximate-density.ts";
import type * as cipm from "../src/gas/cipm-density.ts";
import {
  approximateMoistAirDensity,
  CIPM_2007,
  cipmDensity,
  dryAirDensity,
  humidityRatioFromVapourPressure,
  idealMoistAirDensity,
  moistAirDensity,
} from "../src/gas/index.ts";
import type * as virial from "../src/gas/moist-air-density.ts";
import {
  AIR_WATER_MOLAR_RATIO,
  GAS_CONSTANT_DRY_AIR,
  MOLAR_GAS_CONSTANT,
  MOLAR_MASS_DRY_AIR,
  MOLAR_MASS_WATER,
} from "../src/quantities/index.ts";
import { expected, input, record, recordsNamed } from "./check-records.ts";
import { expectDigits, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "01-moist-air";
const FULL_RECORDS = ["std20", "dry0", "dry15", "dry20", "bar20", "rh25", "hot35"].map((name) =>
  record(TOPIC, `cipm2007.${name}`),
);

type Point = { pressure: number; temperature: number; relativeHumidity: number };
const WITHIN_RANGE: Point[] = [288.15, 293.15, 300.15].flatMap((temperature) =>
  [60_000, 80_000, 101_325, 110_000].flatMap((pressure) =>
    [0, 0.5, 1].map((relativeHumidity) => ({ temperature, pressure, relativeHumidity })),
  ),
);

function moistAirOf(point: Point) {
  const { waterMoleFraction } = cipmDensity(point);
  const { pressure, temperature } = point;
  return {
    pressure,
    temperature,
    humidityRatio: humidityRatioFromVapourPressure(waterMoleFraction * pressure, pressure),
  };
}

function checkFull(module: Pick<typeof cipm, "cipmDensity">): void {
  for (const row of FULL_RECORDS) {
    const value = module.cipmDensity({
      pressure: input(row, "p_Pa"),
      temperature: input(row, "t_degC") + 273.15,
      relativeHumidity: input(row, "h"),
      carbonDioxide: input(row, "xCO2"),
    });
    expectRecord(value.density, row, { part: "rho" });
    expectRecord(value.compressibility, row, { part: "Z" });
    expectRecord(value.saturationPressure, row, { part: "psv" });
    expectRecord(value.enhancement, row, { part: "f" });
    expectRecord(value.waterMoleFraction, row, { part: "xv", scale: 1 });
  }
}

function checkVirial(module: Pick<typeof virial, "moistAirDensity">): void {
  for (const point of WITHIN_RANGE) {
    expectDigits(module.moistAirDensity(moistAirOf(point)), cipmDensity(point).density, 5.3, JSON.stringify(point));
  }
}

function checkShort(module: Pick<typeof approximation, "approximateMoistAirDensity">): void {
  const row = record(TOPIC, "cipm.approx.25");
  const published = module.approximateMoistAirDensity({
    pressure: input(row, "p_mmHg") * 133.322387415,
    temperature: 298.15,
    relativeHumidity: 0.4,
  });
  if (!published.ok) throw new Error(published.message);
  expectRecord(published.value, row);
  for (const pressure of [90_000, 100_000, 110_000]) {
    for (const temperature of [283.15, 293.15, 303.15]) {
      for (const relativeHumidity of [0, 0.4, 0.8]) {
        const point = { pressure, temperature, relativeHumidity };
        const short = module.approximateMoistAirDensity(point);
        if (!short.ok) throw new Error(short.message);
        expectDigits(short.value, cipmDensity(point).density, 3.5, JSON.stringify(point));
      }
    }
  }
}

describe("constants", () => {
  it("are those of CODATA and CIPM-2007", () => {
    expectRecord(MOLAR_GAS_CONSTANT, record(TOPIC, "const.R"));
    expectRecord(CIPM_2007.gasConstant, record(TOPIC, "const.R.cipm2007"));
    expectRecord(MOLAR_MASS_DRY_AIR, record(TOPIC, "const.Ma.cipm2007"));
    expectRecord(MOLAR_MASS_WATER, record(TOPIC, "const.Mv"));
    expectRecord(MOLAR_MASS_DRY_AIR / CIPM_2007.gasConstant, record(TOPIC, "const.MaOverR"));
    expectRecord(GAS_CONSTANT_DRY_AIR, record(TOPIC, "const.Rda.codata"));
    expectRecord(1 / AIR_WATER_MOLAR_RATIO, record(TOPIC, "const.eps"));
  });

  it("of CIPM-2007 are the published set", () => {
    const row = record(TOPIC, "cipm2007.coefficients");
    const [a, b, c, d] = CIPM_2007.saturation;
    const [alpha, beta, gamma] = CIPM_2007.enhancement;
    const [a0, a1, a2] = CIPM_2007.a;
    const [b0, b1] = CIPM_2007.b;
    const [c0, c1] = CIPM_2007.c;
    const ours = {
      A: a,
      B: b,
      C: c,
      D: d,
      alpha,
      beta,
      gamma,
      a0,
      a1,
      a2,
      b0,
      b1,
      c0,
      c1,
      d: CIPM_2007.d,
      e: CIPM_2007.e,
    };
    for (const [part, value] of Object.entries(ours)) expectDigits(value, expected(row, part), 14, part);
  });
});

describe("picard2008", () => {
  it("is reproduced with all its parts", () => checkFull({ cipmDensity }));

  it("agrees with the tables of mass metrology", () => {
    for (const row of recordsNamed(TOPIC, "cipm2007.gupta.")) {
      const point = {
        pressure: input(row, "p_Pa"),
        temperature: input(row, "t_degC") + 273.15,
        relativeHumidity: input(row, "h"),
      };
      expectRecord(cipmDensity(point).density, row);
    }
  });

  it("agrees with the older formula of Jones within what separates the two", () => {
    for (const row of recordsNamed(TOPIC, "jones1978.")) {
      const point = {
        pressure: input(row, "p_mmHg") * 133.322387415,
        temperature: input(row, "t_degC") + 273.15,
        relativeHumidity: input(row, "RH_pct") / 100,
      };
      expectDigits(cipmDensity(point).density, expected(row), 3.7, row.id);
    }
  });

  it("is met by the virial mixture to 5e-6 inside its range", () => checkVirial({ moistAirDensity }));

  it("is met by the ideal mixture to 0.06 % inside its range", () => {
    for (const point of WITHIN_RANGE) {
      expectDigits(idealMoistAirDensity(moistAirOf(point)), cipmDensity(point).density, 3.22);
    }
  });

  it("is met by dry ideal air to 0.05 %", () => {
    const row = record(TOPIC, "cipm2007.dry20");
    expectDigits(dryAirDensity(input(row, "p_Pa"), 293.15), expected(row, "rho"), 3.3);
  });

  it("is met by the short formula to 3e-4 inside that formula's range", () =>
    checkShort({ approximateMoistAirDensity }));

  it("fails once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/gas/cipm-density.ts", "8.314472", 1e-7, checkFull);
    await expectCoefficientMatters("src/gas/cipm-density.ts", "33.93711047", 1e-7, checkFull);
    await expectCoefficientMatters("src/gas/moist-air-density.ts", "return 1", 1e-4, checkVirial);
    await expectCoefficientMatters("src/gas/approximate-density.ts", "0.34848", 3e-3, checkShort);
  });
});
