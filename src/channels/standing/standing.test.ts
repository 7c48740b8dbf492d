import { describe, expect, test } from "vitest";
import { channel, noise, tableOf, understand } from "../test-support/understand.ts";

const speed = (row: number) => Math.round(1800 + 900 * Math.sin(row / 15));
const pressure = (row: number) => Number((45 + 20 * Math.sin(row / 9)).toFixed(1));
const temperature = (row: number) => 25 + Math.floor(row / 60);
const density = (row: number) => (speed(row) / 60) * ((pressure(row) * 1e3) / (temperature(row) + 273.15));
const engine = {
  "Engine Speed [1/min]": speed,
  "Manifold Pressure [kPa]": pressure,
  "Intake Air Temperature [degC]": temperature,
};
const standingOf = (set: ReturnType<typeof understand>, quantity: string) => {
  const found = channel(set, quantity);
  return [found.standing, found.standingReason] as const;
};

describe("a column computed from others is no witness", () => {
  test("speed x pressure / temperature is unmasked, to the rounding of what was written, whatever the displacement", () => {
    const flow = (row: number) => (2.4e-6 * density(row) * 1e3).toFixed(2);
    const [standing, reason] = standingOf(understand(tableOf({ ...engine, "MAF [g/s]": flow }, 300, 0.2)), "meterFlow");
    expect(standing).toBe("computed");
    expect(reason).toMatch(/speed x pressure \/ temperature to rounding in 300 rows, with 1378 cm3 times efficiency/);
  });

  test("without a temperature it is unmasked too", () => {
    const { "Intake Air Temperature [degC]": _, ...bare } = engine;
    const flow = (row: number) => (1.1e-8 * speed(row) * pressure(row) * 1e3).toFixed(3);
    expect(standingOf(understand(tableOf({ ...bare, "MAF [g/s]": flow }, 300, 0.2)), "meterFlow")[0]).toBe("computed");
  });

  test("a meter that reads the same air with half a per cent of noise is measured", () => {
    const flow = (row: number) => (2.4e-3 * density(row) * (1 + 0.01 * noise(4)(row))).toFixed(3);
    expect(standingOf(understand(tableOf({ ...engine, "MAF [g/s]": flow }, 300, 0.2)), "meterFlow")[0]).toBe(
      "measured",
    );
  });

  test("at one operating point nothing can be told, and nothing is", () => {
    const still = { "Engine Speed [1/min]": () => 800, "Manifold Pressure [kPa]": () => 33, "MAF [g/s]": () => 3.2 };
    expect(standingOf(understand(tableOf(still, 100, 0.2)), "meterFlow")[0]).toBe("measured");
  });

  test("a fuel rate that is a fixed share of the flow tells nothing new; the flow itself stays measured", () => {
    const flow = (row: number) => 2.4e-3 * density(row) * (1 + 0.05 * noise(5)(row));
    const set = understand(
      tableOf(
        {
          ...engine,
          "MAF [g/s]": (row) => flow(row).toFixed(3),
          "Fuel rate [L/h]": (row) => (flow(row) * 0.33).toFixed(4),
        },
        300,
        0.2,
      ),
    );
    expect(standingOf(set, "meterFlow")[0]).toBe("measured");
    expect(standingOf(set, "fuelRate")).toEqual([
      "computed",
      expect.stringMatching(/fixed multiple of "MAF \[g\/s\]"/),
    ]);
  });
});

describe("a sensor that does not move, or stands at a stop, is dead", () => {
  test.each([
    ["Intake Air Temperature [degC]", -40, "intakeTemperature", "dead"],
    ["Coolant Temperature [degC]", -40, "coolantTemperature", "dead"],
    ["Intake Air Temperature [degC]", 26, "intakeTemperature", "measured"],
    ["Barometric Pressure [kPa]", 99, "barometer", "measured"],
    ["MAF [g/s]", 3.1, "meterFlow", "dead"],
    ["Commanded Equivalence Ratio", 0, "equivalenceRatioCommanded", "dead"],
  ])("%s at %d: %s is %s", (header, value, quantity, standing) => {
    const set = understand(tableOf({ "Engine Speed [1/min]": speed, [header]: () => value }, 400, 0.2));
    expect(standingOf(set, quantity)[0]).toBe(standing);
  });

  test("set-points are told from measurements", () => {
    const set = understand(
      tableOf({ "Engine Speed [1/min]": speed, "Lambda Soll": (row) => (1 - (row % 9) / 100).toFixed(2) }, 100, 0.2),
    );
    expect(standingOf(set, "lambdaCommanded")[0]).toBe("set-point");
  });
});

describe("impossible samples keep their value and get a code", () => {
  test("a number that stands for no answer is outside validity, a pressure at its stop is clipped", () => {
    const set = understand(
      tableOf(
        {
          "Engine Speed [1/min]": (row) => (row === 50 ? 16383.75 : speed(row)),
          "Manifold Pressure [kPa]": (row) => (row > 80 && row < 90 ? 255 : Math.round(pressure(row) * 2)),
        },
        200,
        0.2,
      ),
    );
    expect(channel(set, "engineSpeed").quality[50]).toBe(3);
    expect([...channel(set, "manifoldPressure").quality.slice(80, 91)]).toEqual([0, 2, 2, 2, 2, 2, 2, 2, 2, 2, 0]);
  });

  test("a temperature that jumps and comes back is an excursion; one that jumps and stays is told as it is", () => {
    const excursion = (row: number) => (row >= 100 && row < 130 ? 130 - (row - 100) : 24 + (row % 2));
    const step = (row: number) => (row >= 100 ? 80 + (row % 2) : 24 + (row % 2));
    const set = (at: (row: number) => number) =>
      understand(tableOf({ "Engine Speed [1/min]": speed, "IAT [degC]": at }, 700, 1));
    const marked = (s: ReturnType<typeof understand>) =>
      [...channel(s, "intakeTemperature").quality].flatMap((code, i) => (code === 0 ? [] : [i]));
    expect(marked(set(excursion))).toEqual(Array.from({ length: 30 }, (_, i) => 100 + i));
    expect(marked(set(step))).toEqual([]);
  });
});
