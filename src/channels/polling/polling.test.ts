import { describe, expect, test } from "vitest";
import { channel, noise, tableOf, understand } from "../test-support/understand.ts";

/** Values that a logger holds until it polls the channel again: row `r` shows the reading of the last poll before it. */
function held(value: (poll: number) => number, period: number, phase: number) {
  return (row: number) => value(Math.max(0, Math.floor((row - phase) / period + 1e-9)));
}
const jitter = noise(1);
const speedAt = (poll: number) => Math.round(1500 + 600 * Math.sin(poll / 5) + 40 * jitter(poll));
const pressureAt = (poll: number) => Math.round(50 + 20 * Math.sin(poll / 4) + 3 * noise(2)(poll));
const loadAt = (poll: number) => Math.round(40 + 20 * Math.cos(poll / 3) + 3 * noise(3)(poll));

describe("a logger that repeats the last value of every channel", () => {
  test("each channel is taken when it was read, in whole periods of rows", () => {
    const set = understand(
      tableOf(
        {
          "Engine Speed [1/min]": held(speedAt, 8, 0),
          "Manifold Pressure [kPa]": held(pressureAt, 8, 3),
          "Engine Load [%]": held(loadAt, 8, 5),
        },
        800,
        0.1,
      ),
    );
    const speed = channel(set, "engineSpeed");
    expect(speed.pollInterval).toBeCloseTo(0.8, 6);
    expect(speed.values.length).toBe(100);
    expect(channel(set, "manifoldPressure").times[5]! - speed.times[5]!).toBeCloseTo(0.3, 6);
  });

  test("readings that happen to be equal are counted: the schedule says when they were made", () => {
    const flat = (poll: number) => (poll % 4 < 2 ? 50 : pressureAt(poll));
    const set = understand(
      tableOf(
        {
          "Engine Speed [1/min]": held(speedAt, 8, 0),
          "Manifold Pressure [kPa]": held(flat, 8, 3),
          "Engine Load [%]": held(loadAt, 8, 5),
        },
        800,
        0.1,
      ),
    );
    const { times } = channel(set, "manifoldPressure");
    const steps = [...times].slice(1).map((t, i) => t - times[i]!);
    expect(times.length).toBeGreaterThanOrEqual(99);
    expect(Math.max(...steps)).toBeCloseTo(0.8, 6);
    expect(Math.min(...steps)).toBeCloseTo(0.8, 6);
  });

  test("a channel that hardly ever changes follows the schedule of the others", () => {
    const set = understand(
      tableOf(
        {
          "Engine Speed [1/min]": held(speedAt, 8, 0),
          "Manifold Pressure [kPa]": held(pressureAt, 8, 3),
          "Coolant Temperature [degC]": held((poll) => 88 + Math.floor(poll / 30), 8, 6),
        },
        800,
        0.1,
      ),
    );
    expect(channel(set, "coolantTemperature").values.length).toBeGreaterThanOrEqual(99);
    expect(channel(set, "coolantTemperature").values.length).toBeLessThanOrEqual(101);
  });

  test("a polling period need not be a whole number of rows", () => {
    const set = understand(
      tableOf(
        { "Engine Speed [1/min]": held(speedAt, 3.67, 0.4), "Manifold Pressure [kPa]": held(pressureAt, 3.67, 1.9) },
        800,
        0.5,
      ),
    );
    expect(channel(set, "engineSpeed").values.length).toBeCloseTo(800 / 3.67, -1);
    expect(channel(set, "engineSpeed").reasons.at(-1)).toMatch(/read every 1\.8/);
  });
});

describe("a logger that reads every channel with every row", () => {
  test("a slow signal of coarse steps is not taken for a polled one", () => {
    const set = understand(
      tableOf(
        {
          "Engine Speed [1/min]": (row) => Math.round(speedAt(row / 8) + 3 * jitter(row)),
          "Coolant Temperature [degC]": (row) => 60 + Math.floor(row / 25 + 0.4 * jitter(Math.floor(row / 3))),
        },
        800,
        0.1,
      ),
    );
    expect(channel(set, "coolantTemperature").values.length).toBe(800);
    expect(channel(set, "engineSpeed").values.length).toBe(800);
  });

  test("a channel written only when it was read has those stamps and no others", () => {
    const set = understand(
      tableOf(
        {
          "Engine Speed [1/min]": (row) => speedAt(row / 8) + (row % 2),
          "Coolant Temperature [degC]": (row) => (row % 10 === 4 ? 80 + row / 400 : ""),
        },
        400,
        0.1,
      ),
    );
    const coolant = channel(set, "coolantTemperature");
    expect(coolant.values.length).toBe(40);
    expect(coolant.times[0]).toBeCloseTo(0.4, 9);
    expect(coolant.pollInterval).toBeCloseTo(1, 6);
    expect(coolant.quality.some((code) => code !== 0)).toBe(false);
  });
});
