import { describe, expect, test } from "vitest";
import { tableOf, understand } from "../test-support/understand.ts";
import { findStates } from "./find-states.ts";
import type { EngineState } from "./state-span.ts";

/** An invented minute: key on 5 s, cranking 1 s, idle to 20 s, pull to 30 s, overrun to 40 s, idle to 60 s; ten rows a second. */
const at = (row: number) => row / 10;
const columns = {
  "Engine Speed [1/min]": (row: number) => {
    const t = at(row);
    if (t < 5) return 0;
    if (t < 6) return 220;
    if (t < 20) return 800 + (row % 5);
    if (t < 30) return 800 + (t - 20) * 400;
    if (t < 40) return 4800 - (t - 30) * 280;
    return 800 + (row % 5);
  },
  "Vehicle Speed [km/h]": (row: number) => (at(row) < 20 || at(row) > 45 ? 0 : 50),
  "Pedal [%]": (row: number) => (at(row) >= 20 && at(row) < 30 ? 98 : 0),
  "Manifold Pressure [kPa]": (row: number) =>
    at(row) < 5 ? 99 : at(row) < 20 || at(row) >= 40 ? 33 + (row % 2) : at(row) < 30 ? 97 : 22,
  "Coolant Temperature [degC]": (row: number) => Math.round(30 + at(row)),
  "STFT [%]": (row: number) => (at(row) < 10 || (at(row) >= 20 && at(row) < 40) ? 0 : Math.sin(row / 4) * 3).toFixed(2),
  Lambda: (row: number) => (at(row) >= 21 && at(row) < 30 ? 0.86 : 1 + 0.01 * Math.sin(row)).toFixed(3),
};
const all = findStates(understand(tableOf(columns, 600, 0.1)));
const spans = (state: EngineState, from: readonly (typeof all)[number][] = all) =>
  from.filter((s) => s.state === state).map((s) => [Math.round(s.start), Math.round(s.end)]);

describe("states of an invented minute", () => {
  test.each<[EngineState, number[][]]>([
    ["key-on", [[0, 5]]],
    ["cranking", [[5, 6]]],
    ["running", [[6, 60]]],
    [
      "idle",
      [
        [6, 20],
        [45, 60],
      ],
    ],
    ["fuel-cut", [[30, 40]]],
    ["full-load", [[20, 30]]],
    ["enrichment", [[21, 30]]],
    ["cold", [[6, 10]]],
    ["warm-up", [[10, 40]]],
    ["warm", [[40, 60]]],
  ])("%s at %j", (state, expected) => {
    const found = spans(state);
    expect(found.length).toBe(expected.length);
    for (const [i, [start, end]] of expected.entries()) {
      expect(Math.abs(found[i]![0]! - start!)).toBeLessThanOrEqual(1);
      expect(Math.abs(found[i]![1]! - end!)).toBeLessThanOrEqual(1);
    }
  });

  test("closed loop is where the trim is at work", () => {
    const closed = spans("closed-loop");
    expect(closed.some(([start, end]) => start! <= 12 && end! >= 19)).toBe(true);
    expect(closed.some(([start, end]) => start! < 26 && end! > 34)).toBe(false);
  });

  test("every span says which channel it was told from", () => {
    for (const span of all) expect(span.reason).toMatch(/^"/);
  });
});

describe("what was not recorded is not claimed", () => {
  test("without speed there are no states, without coolant no warmth, without mixture no loop", () => {
    expect(findStates(understand(tableOf({ "Manifold Pressure [kPa]": (row) => 30 + (row % 9) }, 100, 0.1)))).toEqual(
      [],
    );
    const bare = findStates(understand(tableOf({ "Engine Speed [1/min]": (row) => 800 + (row % 7) }, 100, 0.1)));
    expect([...new Set(bare.map((s) => s.state))].sort()).toEqual(["idle", "running"]);
  });

  test("the engine computer's own word for its loop is taken, as number or as words", () => {
    const loop = (word: (row: number) => number | string) =>
      findStates(
        understand(tableOf({ "Engine Speed [1/min]": (row) => 900 + (row % 9), "Fuel system status": word }, 200, 0.1)),
      );
    for (const states of [loop((row) => (row < 100 ? 1 : 2)), loop((row) => (row < 100 ? "OL" : "CL"))]) {
      expect(spans("open-loop", states)).toEqual([[0, 10]]);
      expect(spans("closed-loop", states)).toEqual([[10, 20]]);
    }
  });

  test("a trim that moved a moment ago closes no loop at full load or while enriched, unless the engine computer says so", () => {
    const columnsOf = {
      "Engine Speed [1/min]": (row: number) => 2000 + (row % 9),
      "Pedal [%]": (row: number) => (row < 50 ? 0 : row < 100 ? 20 : 100),
      "STFT [%]": (row: number) => (row < 98 ? Math.sin(row / 4) * 3 : 0).toFixed(2),
    };
    const closed = spans("closed-loop", findStates(understand(tableOf(columnsOf, 200, 0.1))));
    expect(closed).toEqual([[0, 10]]);
  });

  test("spans end where the recording has a gap", () => {
    const bytes = new TextEncoder().encode(
      `Time [s];Engine RPM\n${Array.from({ length: 100 }, (_, i) => `${i < 50 ? i / 10 : 60 + i / 10};${800 + (i % 5)}`).join("\n")}\n`,
    );
    expect(spans("running", findStates(understand(bytes)))).toEqual([
      [0, 5],
      [65, 70],
    ]);
  });
});
