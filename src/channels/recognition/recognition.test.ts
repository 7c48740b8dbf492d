import { describe, expect, test } from "vitest";
import { channel, INVENTED_ENGINE, tableOf, understand } from "../test-support/understand.ts";
import { parseName } from "./parse-name.ts";
import { PATTERNS } from "./patterns.ts";
import { unitMeaning } from "./unit-meaning.ts";
import words from "./words.json" with { type: "json" };

const wave = (low: number, high: number) => (row: number) =>
  Number((low + ((high - low) * (1 - Math.cos(row / 9))) / 2).toPrecision(5));
const only = (header: string, low: number, high: number) =>
  understand(tableOf({ [header]: wave(low, high), "Engine RPM": wave(800, 3000) }, 80, 0.2));
const conceptsOf = (header: string) => parseName(header).terms.map((term) => term[0]);

describe("names are taken apart into concepts, whatever the language and the writing", () => {
  test.each([
    ["Kühlmitteltemperatur", ["coolant", "temperature"]],
    ["KUEHLMITTEL_TEMP", ["coolant", "temperature"]],
    ["Température du liquide de refroidissement", ["temperature", "coolant"]],
    ["EngineCoolantTemp", ["coolant", "temperature"]],
    ["ECT", ["coolant", "temperature"]],
    ["T_Coolant", ["temperature", "coolant"]],
    ["Lambdasondenspannung", ["probe", "voltage"]],
    ["Eng Spd", ["engine", "speed"]],
    ["Colant Temprature", ["coolant", "temperature"]],
  ])("%s", (header, concepts) => {
    expect(conceptsOf(header)).toEqual(concepts);
  });

  test.each([
    ["STFT_B2", 2, null, null],
    ["Short term fuel trim bank 1", 1, null, null],
    ["O2S12", 1, 2, null],
    ["CATALYST_TEMPERATURE_BANK1_SENSOR2", 1, 2, null],
    ["Lambda 2", null, null, 2],
  ])("%s: bank %s, sensor %s, other number %s", (header, bank, sensor, index) => {
    expect(parseName(header)).toMatchObject({ bank, sensor, index });
  });

  test("every concept that a pattern asks for has a word", () => {
    const known = new Set([
      ...Object.keys(words.words),
      ...Object.values(words.short).flatMap((concepts) => concepts.split(" ")),
    ]);
    const asked = new Set(PATTERNS.flatMap((pattern) => pattern.needs.flat()));
    expect([...asked].filter((concept) => !known.has(concept))).toEqual([]);
  });
});

describe("units", () => {
  test("what a pressure counts from is read off its unit", () => {
    expect(unitMeaning("psig")).toMatchObject({ reference: "gauge", unit: { symbol: "psi" } });
    expect(unitMeaning("kPa abs")).toMatchObject({ reference: "absolute", unit: { symbol: "kPa" } });
    expect(unitMeaning("bar(a)")).toMatchObject({ reference: "absolute" });
    expect(unitMeaning("mbar rel")).toMatchObject({ reference: "gauge", unit: { symbol: "mbar" } });
    expect(unitMeaning("furlong")).toBeNull();
  });

  test.each([
    ["Saugrohrdruck", 280, 990, "manifoldPressure", 28_000],
    ["MAP (inHg)", 8, 29, "manifoldPressure", 8 * 3386.388640341],
    ["Manifold vacuum [inHg]", 1, 20, "manifoldPressure", 101_325 - 20 * 3386.388640341],
    ["Boost [psi]", 0, 15, "boostPressure", 101_325],
    ["Boost [psi]", -11, 15, "manifoldPressure", 101_325 - 11 * 6894.757293168],
    ["Coolant (F)", 60, 195, "coolantTemperature", (60 + 459.67) / 1.8],
    ["Coolant", 60, 195, "coolantTemperature", (60 + 459.67) / 1.8],
    ["TPS", 0.05, 0.95, "throttlePosition", 0.05],
    ["TPS [%]", 5, 95, "throttlePosition", 0.05],
    ["AFR", 11.76, 16.17, "lambda", 0.8],
    ["STFT", 0.9, 1.1, "shortTrim", -0.1],
    ["STFT [%]", 92, 108, "shortTrim", -0.08],
    ["Air flow [lb/min]", 0.5, 20, "meterFlow", 0.5 * 0.0075598728333],
  ])("%s from %d to %d is %s, from %d SI", (header, low, high, quantity, lowest) => {
    const found = channel(only(header, low, high), quantity);
    expect(Math.min(...found.values)).toBeCloseTo(lowest, lowest > 1000 ? -2 : 2);
  });

  test("with the engine off an absolute pressure reads the barometer: that settles a missing unit and a gauge", () => {
    const columns = (rest: number, low: number, high: number, header: string) => ({
      "Engine RPM": (row: number) => (row < 20 ? 0 : 900 + row),
      [header]: (row: number) => (row < 20 ? rest : wave(low, high)(row)),
    });
    const inches = understand(tableOf(columns(29.4, 9, 20, "Manifold pressure"), 120, 0.2));
    expect(channel(inches, "manifoldPressure").source.unitUsed).toBe("inHg");
    const gauge = understand(tableOf(columns(0, 2, 90, "Turbo pressure [kPa]"), 120, 0.2));
    expect(channel(gauge, "boostPressure").source.unitUsed).toBe("kPa gauge");
  });

  test("a stated unit under which the values are impossible is read in the one that fits, less surely, and told", () => {
    const set = only("Manifold Pressure [bar]", 250, 990);
    const pressure = channel(set, "manifoldPressure");
    expect(pressure.values[0]).toBeCloseTo(25_000, 6);
    expect(pressure.confidence).toBeLessThan(0.8);
    expect(set.warnings.find((w) => w.code === "unit-contradiction")?.text).toMatch(
      /states bar, but its values only fit hPa/,
    );
  });

  test("a unit of another kind than the name asks for is shown, never used", () => {
    const set = only("Coolant temperature [kPa]", 20, 90);
    expect(set.channels.map((c) => c.quantity)).toEqual(["engineSpeed"]);
    expect(set.unrecognised[0]).toMatchObject({
      header: "Coolant temperature [kPa]",
      candidates: [{ quantity: "coolantTemperature" }],
    });
  });
});

describe("asked instead of guessed", () => {
  test.each([
    "Signal 7",
    "Cabin temperature [degC]",
    "Oil pressure [bar]",
    "Steering angle [deg]",
    "CO2",
    "Time since codes cleared [s]",
    "Idle speed target [1/min]",
  ])("%s is not recognised as anything", (header) => {
    expect(only(header, 1, 4).channels.map((c) => c.source.header)).toEqual(["Engine RPM"]);
  });

  test("what is unsure names its candidates", () => {
    const set = only("CO2", 1, 9);
    expect(set.unrecognised[0]!.candidates[0]).toMatchObject({ quantity: "carbonDioxide" });
    expect(set.unrecognised[0]!.reason).toContain("only its unit could tell");
  });
});

test("the flow of a column without unit is read in the unit that gives the engine a believable volume", () => {
  // 2 L engine, breathing 0.85: m = eta p V N / (2 R T); written in kg/h.
  const speed = wave(850, 4200);
  const pressure = (row: number) => Number((35 + 30 * (1 - Math.cos(row / 7))).toFixed(2));
  const flow = (row: number) => (0.85 * pressure(row) * 1e3 * 2e-3 * (speed(row) / 60)) / (2 * 287.05 * 303.15);
  const perHour = understand(
    tableOf(
      {
        "Engine Speed [1/min]": speed,
        "Manifold Pressure [kPa]": pressure,
        "Intake Air Temperature [degC]": () => 30,
        "MAF sensor": (row) => (flow(row) * 3600 * (1 + 0.04 * Math.sin(row))).toFixed(3),
      },
      200,
      0.2,
    ),
    { engine: INVENTED_ENGINE },
  );
  const found = channel(perHour, "meterFlow");
  expect(found.source.unitUsed).toBe("kg/h");
  expect(found.values[50]! / flow(50)).toBeCloseTo(1 + 0.04 * Math.sin(50), 3);
});
