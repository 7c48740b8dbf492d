/** What must not be guessed: two units, an unknown unit, words that are about a thing; and words that must be understood. */
import { describe, expect, test } from "vitest";
import { channel, tableOf, understand } from "../test-support/understand.ts";

const wave = (low: number, high: number) => (row: number) =>
  Number((low + ((high - low) * (1 - Math.cos(row / 9))) / 2).toPrecision(5));
const only = (header: string, low: number, high: number) =>
  understand(tableOf({ [header]: wave(low, high), "Engine RPM": wave(800, 3000) }, 80, 0.2));

/** An invented table with a row of units below the names. */
function withUnitRow(header: string, unit: string, low: number, high: number) {
  const rows = Array.from({ length: 60 }, (_, i) => `${i},${800 + (i % 5)},${wave(low, high)(i)}`).join("\n");
  const text = `time,engine speed,${header}\ns,rpm,${unit}\n${rows}\n`;
  return understand(Uint8Array.from(text, (c) => c.charCodeAt(0)));
}

describe("two units for one column, in its name and in a row of units, are asked about and not chosen between", () => {
  test.each([
    ["manifold pressure [kPa]", "psi"],
    ["manifold pressure kPa", "psi"],
    ["MAP_kPa", "psi"],
    ["manifold pressure (psig)", "psia"],
  ])("%s above %s", (header, unit) => {
    const set = withUnitRow(header, unit, 5, 14);
    expect(set.channels.map((c) => c.quantity)).toEqual(["engineSpeed"]);
    const said = /kPa|psig/.exec(header)![0];
    expect(set.unrecognised[0]?.reason).toContain(`its name says ${said}, its unit says ${unit}: pin the right unit`);
  });

  test("the same unit twice, and a word of the name that only spells one, are no contradiction", () => {
    expect(channel(withUnitRow("manifold pressure [kPa]", "kPa", 30, 95), "manifoldPressure").values[0]).toBe(30e3);
    expect(channel(withUnitRow("vehicle speed GPS", "km/h", 0, 90), "vehicleSpeed").source.unitUsed).toBe("km/h");
  });
});

describe("a unit that is not known is asked about, never replaced by another", () => {
  test.each([
    ["Turbo speed (kilorounds)", 30, 120],
    ["Air flow (slug/h)", 2, 90],
    ["Air flow [slug/h]", 2, 90],
    ["Engine speed x10", 80, 310],
    ["Manifold pressure raw", 300, 800],
    ["MAF ADC", 300, 800],
  ])("%s", (header, low, high) => {
    const set = understand(tableOf({ [header]: wave(low, high), "Coolant temperature [degC]": wave(60, 90) }, 80, 0.2));
    expect(set.channels.map((c) => c.quantity)).toEqual(["coolantTemperature"]);
  });

  test("thousands of revolutions are read as such, behind a blank and behind a number", () => {
    for (const unit of ["krpm", "1000/min", "x1000 rpm"]) {
      const { values } = channel(only(`Turbo shaft speed [${unit}]`, 30, 120), "turboSpeed");
      expect(values[0]).toBeCloseTo(500, 6);
    }
    expect(channel(only("Turbo speed krpm", 30, 120), "turboSpeed").values[0]).toBeCloseTo(500, 6);
  });
});

describe("a name about the thing is not the thing's value", () => {
  const settings = (row: number) => 1 + (Math.floor(row / 20) % 3);
  test.each([
    "MAP index",
    "Manifold pressure fault",
    "Boost stage",
    "Pressure ratio",
    "Map switch position",
    "Ladedruckkennfeld",
    "Getriebegang Nummer",
    "Rapport de pression suralimentation",
    "Maximum boost",
    "Coolant temp warning lamp",
    "Engine bay temperature",
    "Oil pump speed",
  ])("%s", (header) => {
    const set = understand(tableOf({ [header]: settings, "Engine RPM": wave(800, 3000) }, 80, 0.2));
    expect(set.channels.map((c) => c.source.header)).toEqual(["Engine RPM"]);
  });

  test("the supply of a meter is not its signal", () => {
    for (const header of ["MAF supply [V]", "LMM Versorgung [V]", "Alimentation débitmètre [V]"]) {
      expect(only(header, 4.98, 5.02).channels.map((c) => c.quantity)).not.toContain("meterVoltage");
    }
  });

  test("whole numbers without a unit are no pressure in bar", () => {
    const set = understand(tableOf({ MAP: settings, "Engine RPM": wave(800, 3000) }, 80, 0.2));
    expect(set.channels.map((c) => c.quantity)).toEqual(["engineSpeed"]);
  });
});

describe("words of the trade in five languages", () => {
  test.each([
    ["Richesse", "lambda", (row: number) => (row % 2 ? 1.25 : 1)],
    ["Richesse mesurée", "lambda", (row: number) => (row % 2 ? 1.25 : 1)],
    ["Rapport enclenché", "gear", (row: number) => 1 + (row % 3)],
    ["Marcha seleccionada", "gear", (row: number) => 1 + (row % 3)],
    ["Eingelegter Gang", "gear", (row: number) => 1 + (row % 3)],
    ["Coupure injection", "fuelCut", (row: number) => (row % 2 ? "oui" : "non")],
    ["Corte de injeção", "fuelCut", (row: number) => (row % 2 ? "sim" : "não")],
    ["Luftmenge angesaugt kg/h", "meterFlow", wave(12, 90)],
    ["Turbine inlet temperature [degC]", "exhaustTemperature", wave(300, 700)],
    ["Temperatura antes de turbina °C", "exhaustTemperature", wave(300, 700)],
    ["Coolant_T_degC", "coolantTemperature", wave(60, 90)],
  ] as const)("%s is %s", (header, quantity, at) => {
    const set = understand(tableOf({ [header]: at, "Engine RPM": wave(800, 3000) }, 80, 0.2));
    expect(set.channels.map((c) => c.quantity)).toContain(quantity);
  });

  test("richesse counts fuel over air: its inverse is lambda", () => {
    const set = understand(tableOf({ Richesse: (row) => (row % 2 ? 1.25 : 1) }, 80, 0.2));
    expect(Math.min(...channel(set, "lambda").values)).toBeCloseTo(0.8, 12);
  });
});
