/** What must be recognised in parts of real recordings (test/recordings; origin and licence: NOTICE.md there). */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { toSi, unit } from "../quantities/index.ts";
import { readRecording } from "../recording/index.ts";
import { type ChannelSet, findStates, recogniseChannels } from "./index.ts";

function understand(path: string): ChannelSet {
  const bytes = readFileSync(new URL(`../../test/recordings/${path}`, import.meta.url));
  const recording = readRecording(bytes, { name: path });
  if (!recording.ok) throw new Error(recording.message);
  const set = recogniseChannels(recording.value, { engine: null, pins: null });
  if (!set.ok) throw new Error(set.message);
  return set.value;
}

/** [quantity, unit in the file, s between real readings, standing, first value as written or null] */
type Expected = readonly [quantity: string, unit: string, interval: number, standing: string, first: number | null];

function expectChannels(set: ChannelSet, table: readonly Expected[]): void {
  const found = set.channels.map((c) => [
    c.quantity,
    c.source.unitUsed,
    Math.round(c.pollInterval * 10) / 10,
    c.standing,
  ]);
  expect(found).toEqual(table.map(([quantity, symbol, interval, standing]) => [quantity, symbol, interval, standing]));
  for (const [i, [, symbol, , , first]] of table.entries()) {
    if (first !== null) expect(set.channels[i]!.values[0]).toBeCloseTo(toSi(first, unit(symbol)), 9);
  }
}

test("the numeric scanner takes nearly every row of the real recordings", () => {
  const files = [
    "kit-obd/start-and-idle.csv",
    "kit-obd/impossible-intake-temperature.csv",
    "envirocar/petrol-1086.csv",
    "envirocar/diesel-stuck-temperature.csv",
  ];
  const shares = files.map((path) => {
    const recording = readRecording(readFileSync(new URL(`../../test/recordings/${path}`, import.meta.url)), {
      name: path,
    });
    return recording.ok ? recording.value.fastShare : 0;
  });
  console.info(
    files.map((file, i) => `${file}: ${(100 * shares[i]!).toFixed(1)} % of the rows by the scanner`).join("\n"),
  );
  expect(Math.min(...shares)).toBeGreaterThan(0.99);
});

const channelOf = (set: ChannelSet, quantity: string) => set.channels.find((c) => c.quantity === quantity)!;

describe("kit-obd: clock time, polled channels that repeat their last value", () => {
  const set = understand("kit-obd/start-and-idle.csv");

  test("every channel is recognised, in its unit, read about once a second", () => {
    expectChannels(set, [
      ["coolantTemperature", "degC", 0.8, "measured", 32],
      ["manifoldPressure", "kPa", 0.8, "measured", 99],
      ["engineSpeed", "1/min", 0.8, "measured", 0],
      ["vehicleSpeed", "km/h", 0.8, "measured", 0],
      ["intakeTemperature", "degC", 0.8, "measured", 23],
      ["meterFlow", "g/s", 0.8, "measured", 0.91],
      ["throttlePosition", "%", 0.8, "measured", 89],
      ["ambientTemperature", "degC", 0.8, "measured", 22],
      ["pedalPosition", "%", 0.8, "measured", 14.1],
      ["pedalPosition", "%", 0.8, "measured", 14.5],
    ]);
    expect(set.unrecognised).toEqual([]);
    expect(set.channels.map((c) => c.confidence > 0.95)).not.toContain(false);
  });

  test("a polled channel holds its real readings only, one channel a row in a fixed order", () => {
    for (const [k, channel] of set.channels.entries()) {
      expect(channel.values.length).toBe(70);
      // The k-th channel is new in the rows k, k + 10, k + 20 ...: 0.09 s after the one before it.
      expect(channel.times[0]).toBeCloseTo(0.09 * k, 1);
      if (k > 0) expect(channel.times[30]! - set.channels[k - 1]!.times[30]!).toBeCloseTo(0.09, 1);
    }
  });

  test("key on, cranking and a cold idle are told apart", () => {
    const states = findStates(set);
    expect(states.find((s) => s.state === "key-on")?.start).toBeLessThan(1);
    expect(states.find((s) => s.state === "cranking")).toMatchObject({ start: expect.closeTo(2.9, 0) });
    expect(states.find((s) => s.state === "cold")?.start).toBeCloseTo(3.8, 0);
    expect(states.find((s) => s.state === "idle")?.end).toBeGreaterThan(20);
  });

  test("an excursion of the intake temperature to 140 degC within two seconds is marked, what lies around it is not", () => {
    const temperature = channelOf(understand("kit-obd/impossible-intake-temperature.csv"), "intakeTemperature");
    const good = temperature.values.filter((_, i) => temperature.quality[i] === 0);
    expect(Math.max(...temperature.values)).toBeCloseTo(273.15 + 141, 6);
    expect(Math.max(...good)).toBeLessThan(273.15 + 36);
    const marked = temperature.times.filter((_, i) => temperature.quality[i] !== 0);
    expect(good.length).toBeGreaterThan(30);
    expect(marked.at(-1)! - marked[0]!).toBeLessThan(90);
    expect(temperature.quality.at(-1)).toBe(0);
  });
});

describe("envirocar: ISO time, no units, a computed flow, a stuck sensor", () => {
  test("the petrol track: the flow is unmasked as computed, with 0.85 times the displacement of 1086 cm3", () => {
    const set = understand("envirocar/petrol-1086.csv");
    expectChannels(set, [
      ["meterFlow", "g/s", 5, "computed", 3.403951333713243],
      ["calculatedLoad", "%", 5, "measured", null],
      ["manifoldPressure", "kPa", 5, "measured", 40.04517975449562],
      ["intakeTemperature", "degC", 5, "measured", 45],
      ["engineSpeed", "1/min", 5, "measured", 1009.1765556335449],
      ["vehicleSpeed", "km/h", 5, "measured", null],
      ["throttlePosition", "%", 5, "measured", null],
    ]);
    expect(channelOf(set, "meterFlow").standingReason).toMatch(/speed x pressure \/ temperature.*923 cm3/);
    expect(0.85 * 1086).toBeCloseTo(923, 0);
    // Neither carbon dioxide nor consumption states its unit: asked, not guessed.
    expect(set.unrecognised.map((u) => u.header)).toEqual(["CO2", "Consumption"]);
  });

  test("the diesel track: the intake temperature that stands at 0 degC is dead, the flow is measured", () => {
    const set = understand("envirocar/diesel-stuck-temperature.csv");
    expect(channelOf(set, "intakeTemperature").standing).toBe("dead");
    expect(channelOf(set, "meterFlow").standing).toBe("measured");
    expect(set.warnings.map((w) => w.code)).toContain("dead-sensor");
    expect(set.unrecognised.map((u) => u.header)).toEqual(["O2 Lambda Voltage ER"]);
  });
});
