import { describe, expect, test } from "vitest";
import { readRecording } from "../../recording/index.ts";
import { recogniseChannels } from "../recognise-channels.ts";
import { channel, tableOf, understand } from "../test-support/understand.ts";
import { channelListOf, formatChannelList } from "./format-channel-list.ts";
import { parseChannelList } from "./parse-channel-list.ts";

const bytes = tableOf(
  {
    "Engine Speed [1/min]": (row) => 800 + row,
    "Boost [psi]": (row) => (row % 15) + 1,
    "Signal 7": (row) => 1 + (row % 30) / 10,
    "STFT B1": (row) => 0.95 + (row % 10) / 100,
    "AFR B2": (row) => 14 + (row % 10) / 10,
  },
  60,
  0.2,
);
const parsed = (list: unknown) =>
  parseChannelList(JSON.stringify({ format: "airtally-channels/1", ...(list as object) }));
function pins(channels: readonly unknown[]) {
  const list = parsed({ channels });
  if (!list.ok) throw new Error(list.message);
  return list.value;
}
function recognise(channels: readonly unknown[]) {
  const recording = readRecording(bytes, { name: "invented.csv" });
  if (!recording.ok) throw new Error(recording.message);
  return recogniseChannels(recording.value, { engine: null, pins: pins(channels) });
}

describe("a channel list", () => {
  test("written from a set and handed back gives the same channels", () => {
    const set = understand(bytes);
    const list = parseChannelList(formatChannelList(channelListOf(set)));
    if (!list.ok) throw new Error(list.message);
    const again = understand(bytes, { pins: list.value });
    const shown = (s: typeof set) =>
      s.channels.map((c) => [c.quantity, c.bank, c.source.unitUsed, ...c.values.slice(0, 5)]);
    expect(shown(again)).toEqual(shown(set));
    expect(again.unrecognised.map((u) => u.header)).toEqual(set.unrecognised.map((u) => u.header));
  });

  test("pins by header or by number, says units and banks, leaves columns out", () => {
    const set = understand(bytes, {
      pins: pins([
        { header: "Signal 7", quantity: "meterVoltage", unit: "V" },
        { column: 3, quantity: "manifoldPressure", unit: "psi gauge" },
        { header: "STFT B1", ignore: true },
      ]),
    });
    expect(channel(set, "meterVoltage")).toMatchObject({
      confidence: 1,
      source: { header: "Signal 7", unitUsed: "V" },
    });
    expect(channel(set, "manifoldPressure").values[0]).toBeCloseTo(101_325 + 6894.757, 2);
    expect(set.channels.some((c) => c.quantity === "shortTrim")).toBe(false);
    expect(set.unrecognised.find((u) => u.header === "STFT B1")?.reason).toBe("left out by the channel list");
  });

  test("a pin without a column, twice on one column, or in a unit that is none of its quantity is refused", () => {
    expect(recognise([{ header: "Signal 8", quantity: "meterVoltage" }])).toMatchObject({
      ok: false,
      reason: "pin-without-column",
    });
    expect(
      recognise([
        { column: 4, quantity: "meterVoltage" },
        { header: "Signal 7", quantity: "lambda" },
      ]),
    ).toMatchObject({ ok: false, reason: "pin-contradiction" });
    expect(recognise([{ column: 4, quantity: "lambda", unit: "V" }])).toMatchObject({
      ok: false,
      reason: "pin-contradiction",
      where: { column: 4 },
    });
  });

  test.each([
    ["not JSON", "{", "not-json", ""],
    ["another format", '{"format":"airtally-channels/9","channels":[]}', "wrong-format", "airtally-channels/1"],
    ["a mistyped key", '{"format":"airtally-channels/1","chanels":[]}', "unknown-key", '"channels"'],
    [
      "a mistyped key of an entry",
      '{"format":"airtally-channels/1","channels":[{"colum":1,"quantity":"lambda"}]}',
      "unknown-key",
      '"column"',
    ],
    [
      "a mistyped quantity",
      '{"format":"airtally-channels/1","channels":[{"column":1,"quantity":"engineSped"}]}',
      "unknown-word",
      '"engineSpeed"',
    ],
    [
      "an unknown unit",
      '{"format":"airtally-channels/1","channels":[{"column":1,"quantity":"lambda","unit":"parsec"}]}',
      "unknown-word",
      "kPa",
    ],
    [
      "column zero",
      '{"format":"airtally-channels/1","channels":[{"column":0,"quantity":"lambda"}]}',
      "wrong-type",
      "1 for the first",
    ],
    [
      "an entry that names no column",
      '{"format":"airtally-channels/1","channels":[{"quantity":"lambda"}]}',
      "wrong-type",
      '"column" or "header"',
    ],
  ])("%s is refused, naming what was meant", (_, text, reason, said) => {
    const list = parseChannelList(text);
    expect(list).toMatchObject({ ok: false, reason });
    if (!list.ok) expect(`${list.message} ${list.remedy}`).toContain(said);
  });
});
