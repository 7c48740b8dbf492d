import { describe, expect, test } from "vitest";
import { type Recording, readRecording } from "../index.ts";

function read(stamps: readonly string[], header: string, rate?: number): Recording {
  const text = `${header};n;p\n${stamps.map((s, i) => `${s};${800 + i};${33 + (i % 2)}`).join("\n")}\n`;
  const options = { name: "invented.csv", ...(rate === undefined ? {} : { rate }) };
  const result = readRecording(new TextEncoder().encode(text), options);
  if (!result.ok) throw new Error(`${result.reason}: ${result.message}`);
  return result.value;
}
const secondsOf = (recording: Recording) => [...recording.time!.seconds].map((t) => Math.round(t * 1e6) / 1e6);

describe("forms of time", () => {
  const even = [0, 0.1, 0.2, 0.3];
  const cases: readonly (readonly [string, string, readonly string[]])[] = [
    ["seconds", "Time [s]", ["12.0", "12.1", "12.2", "12.3"]],
    ["milliseconds by unit", "Time (ms)", ["500", "600", "700", "800"]],
    ["milliseconds without unit, told by their steps", "time", ["500", "600", "700", "800"]],
    ["microseconds", "Time [us]", ["500000", "600000", "700000", "800000"]],
    ["a unit in the name", "time_ms", ["500", "600", "700", "800"]],
    ["clock", "Uhrzeit", ["09:59:59,9", "10:00:00,0", "10:00:00,1", "10:00:00,2"]],
    ["clock past midnight", "Time", ["23:59:59.9", "00:00:00.0", "00:00:00.1", "00:00:00.2"]],
    ["twelve-hour clock", "Time", ["11:59:59.9 AM", "12:00:00.0 PM", "12:00:00.1 PM", "12:00:00.2 PM"]],
    ["minutes and seconds", "Time", ["59:59.9", "60:00.0", "60:00.1", "60:00.2"]],
    [
      "ISO 8601 in UTC",
      "timestamp",
      ["2026-11-24T09:59:59.9Z", "2026-11-24T10:00:00Z", "2026-11-24T10:00:00.1Z", "2026-11-24T10:00:00.2Z"],
    ],
    [
      "ISO 8601 with zones",
      "timestamp",
      [
        "2026-11-24T09:59:59.9+00:00",
        "2026-11-24T11:00:00+01:00",
        "2026-11-24T10:00:00.1Z",
        "2026-11-24T05:30:00.2-0430",
      ],
    ],
    [
      "day first",
      "Datum Zeit",
      ["24.11.2026 09:59:59,9", "24.11.2026 10:00:00,0", "24.11.2026 10:00:00,1", "24.11.2026 10:00:00,2"],
    ],
    [
      "month first",
      "Date",
      ["11/24/2026 9:59:59.9", "11/24/2026 10:00:00.0", "11/24/2026 10:00:00.1", "11/24/2026 10:00:00.2"],
    ],
    ["seconds since 1970", "time", ["1795514399.9", "1795514400.0", "1795514400.1", "1795514400.2"]],
    ["milliseconds since 1970", "time", ["1795514399900", "1795514400000", "1795514400100", "1795514400200"]],
    ["spreadsheet days", "time", [0, 1, 2, 3].map((i) => (46350.5 + (i * 0.1) / 86400).toFixed(12))],
  ];
  for (const [title, header, stamps] of cases) {
    test(`${title}`, () => {
      const digits = title === "spreadsheet days" ? 5 : 6;
      const seconds = secondsOf(read(stamps, header));
      expect(seconds).toEqual(even.map((t) => expect.closeTo(t, digits)));
    });
  }

  test("a date and a clock in two columns are added, past midnight too", () => {
    const text = "Date,Time,n\n2026-02-28,23:59:58,800\n2026-02-28,23:59:59,810\n2026-03-01,00:00:00,820\n";
    const result = readRecording(new TextEncoder().encode(text), { name: "x" });
    expect(result.ok && [...result.value.time!.seconds]).toEqual([0, 1, 2]);
  });

  test("sample numbers need a rate: none is invented, a stated one is used and numbers left out are a gap", () => {
    const stamps = ["1", "2", "3", "40"];
    expect(read(stamps, "Sample").time).toBeNull();
    const recording = read(stamps, "Sample", 10);
    expect(secondsOf(recording)).toEqual([0, 0.1, 0.2, 3.9]);
    expect(recording.stretches).toHaveLength(2);
  });

  test("a rate in the lines above the table is used and said", () => {
    const text = "Invented logger\nSample rate: 20 Hz\nn,p\n800,33\n810,34\n820,33\n";
    const result = readRecording(new TextEncoder().encode(text), { name: "x" });
    expect(result.ok && [...result.value.time!.seconds]).toEqual([0, 0.05, 0.1]);
    expect(result.ok && result.value.time!.how).toContain("as the file states");
  });

  test("names that only contain a word of time are no time", () => {
    for (const header of ["Engine run time", "Injection time [ms]", "Time since codes cleared"]) {
      expect(read(["1", "2", "3", "4"], header).time).toBeNull();
    }
  });

  test("a rate that is no rate is refused", () => {
    const bytes = new TextEncoder().encode("n,p\n1,2\n3,4\n");
    expect(readRecording(bytes, { name: "x", rate: 0 })).toMatchObject({ ok: false, reason: "bad-rate" });
  });
});

describe("clocks that do not run evenly", () => {
  test("a gap begins a new stretch and keeps its length", () => {
    const recording = read(["0", "1", "2", "3", "60", "61", "62"], "Time [s]");
    expect(recording.stretches.map((s) => [s.startRow, s.endRow])).toEqual([
      [0, 4],
      [4, 7],
    ]);
    expect(secondsOf(recording)).toEqual([0, 1, 2, 3, 60, 61, 62]);
  });

  test("a clock that falls begins a new stretch behind the old one, never before it", () => {
    const recording = read(["10", "11", "12", "0", "1", "2"], "Time [s]");
    expect(recording.stretches).toHaveLength(2);
    expect(secondsOf(recording)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(recording.warnings.map((w) => w.code)).toContain("time-backward");
  });

  test("a stamp that comes twice begins a new stretch", () => {
    const recording = read(["0", "0.1", "0.2", "0.2", "0.3", "0.4", "0.5", "0.6"], "Time [s]");
    expect(recording.stretches).toHaveLength(2);
    expect(recording.warnings.map((w) => w.code)).toContain("time-repeated");
  });

  test("rows under one coarse stamp are spread evenly, and the coarseness is stated", () => {
    const stamps = [0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4].map((s) => `10:00:0${s}`);
    const recording = read(stamps, "Time");
    const seconds = secondsOf(recording);
    expect(seconds.slice(2, 8)).toEqual([0.5, 0.75, 1, 1.25, 1.5, 1.75]);
    expect(recording.time).toMatchObject({ resolution: 1 });
    expect(recording.stretches).toHaveLength(1);
  });

  test("a lost stamp is put between its neighbours and said", () => {
    const recording = read(["0", "1", "", "3", "4"], "Time [s]");
    expect(secondsOf(recording)).toEqual([0, 1, 2, 3, 4]);
    expect(recording.warnings.map((w) => w.code)).toContain("time-missing");
  });
});
