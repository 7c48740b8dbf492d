import { describe, expect, it } from "vitest";
import { type Protocol, rpm } from "./protocol.ts";
import { quantise } from "./recorder.ts";
import { RECORDER_CHANNELS, type RecorderChannelId } from "./recorder-channel-table.ts";
import { simulateFamily } from "./simulate-family.ts";
import { type Family, standardTester, TESTER_CHANNELS, workshopLogger } from "./standard-recorders.ts";
import { PLAIN_STYLE } from "./table-text.ts";
import { TRACE_COLUMNS } from "./trace.ts";

/** Key on, idle, a bend in the road, overrun: full load for a moment, half a minute in all. */
const SHORT: Protocol = [
  { do: "key-on", seconds: 3 },
  { do: "idle", seconds: 12 },
  { do: "drive", seconds: 9, speed: rpm(2500), load: 0.6 },
  { do: "drive", seconds: 5, speed: rpm(2600), load: 1, ramp: 1 },
  { do: "overrun", seconds: 4, from: rpm(2600), to: rpm(1400) },
];

const table = (text: string) =>
  text
    .trimEnd()
    .split("\n")
    .filter((line) => !line.startsWith("#"))
    .map((line) => line.split(","));

describe("simulateRecording", () => {
  it("is the same to the bit for the same seed, recording and truth, and another for another", () => {
    const again = (seed: number) => simulateFamily({ family: "petrol-with-meter", seed, protocol: SHORT });
    const first = again(3);
    const second = again(3);
    expect(second.recording.text).toBe(first.recording.text);
    for (const column of TRACE_COLUMNS) {
      const other = second.truth[column];
      expect(first.truth[column].every((x, i) => Object.is(x, other[i]))).toBe(true);
    }
    expect(again(4).recording.text).not.toBe(first.recording.text);
  });

  it("keeps the driver's road when another recorder listens: the truth does not depend on the recorder", () => {
    const options = { family: "petrol-with-meter", seed: 3, protocol: SHORT } as const;
    const polled = simulateFamily(options);
    const logged = simulateFamily({ ...options, recorder: workshopLogger(20) });
    expect(logged.truth.airIntoCylinders.every((x, i) => x === polled.truth.airIntoCylinders[i])).toBe(true);
  });

  it("writes no number that is not finite, in any family", () => {
    for (const family of Object.keys(TESTER_CHANNELS) as Family[]) {
      const { truth } = simulateFamily({ family, seed: 2, protocol: SHORT });
      for (const column of TRACE_COLUMNS) {
        expect(
          truth[column].every((x) => Number.isFinite(x)),
          `${family} ${column}`,
        ).toBe(true);
      }
    }
  });

  it("rounds every polled value to the step of its SAE J1979 parameter", () => {
    for (const family of Object.keys(TESTER_CHANNELS) as Family[]) {
      const rows = table(simulateFamily({ family, seed: 6, protocol: SHORT }).recording.text).slice(1);
      TESTER_CHANNELS[family].forEach((id: RecorderChannelId, i) => {
        const { step, low, high } = RECORDER_CHANNELS[id];
        const off = rows.slice(0, 3000).filter((row) => {
          const cell = row[i + 1]!;
          const printed = 0.5 * 10 ** -(cell.split(".")[1]?.length ?? 0);
          return Math.abs(Number(cell) - quantise(Number(cell), step, low, high)) > printed + 1e-9;
        });
        expect(off, id).toEqual([]);
      });
    }
  });

  it("asks for one channel at a time: at most one cell of a row differs from the row before", () => {
    const rows = table(simulateFamily({ family: "petrol-with-meter", seed: 6, protocol: SHORT }).recording.text).slice(
      1,
    );
    for (let i = 1; i < rows.length; i++) {
      const changed = rows[i]!.slice(1).filter((cell, j) => cell !== rows[i - 1]![j + 1]).length;
      expect(changed).toBeLessThanOrEqual(1);
    }
  });

  it("leaves cells empty when asked for sparse rows, and gives one row a round when asked for rounds", () => {
    const polled = standardTester("petrol-with-meter");
    const one = (rows: "sparse" | "each-round") =>
      table(
        simulateFamily({
          family: "petrol-with-meter",
          seed: 6,
          protocol: SHORT,
          recorder: { ...polled, rows } as typeof polled,
        }).recording.text,
      ).slice(1);
    expect(one("sparse").every((row) => row.slice(1).filter((cell) => cell !== "").length === 1)).toBe(true);
    const rounds = one("each-round");
    expect(rounds.slice(0, 100).every((row) => row.every((cell) => cell !== ""))).toBe(true);
  });

  it("writes the styles it is asked for: decimal comma, units in a row, clock time", () => {
    const polled = standardTester("petrol-with-meter");
    const style = {
      ...PLAIN_STYLE,
      delimiter: ";",
      decimalMark: ",",
      units: "row",
      time: "clock",
      names: "short",
    } as const;
    const { recording } = simulateFamily({
      family: "petrol-with-meter",
      seed: 6,
      protocol: SHORT,
      recorder: { ...polled, style: { ...style, lineEnd: "\r\n" } },
    });
    const lines = recording.text.split("\r\n");
    expect(lines[0]).toMatch(/^TIME;RPM;MAP;IAT/);
    expect(lines[1]).toMatch(/^;rpm;kPa;°C/);
    expect(lines[2]).toMatch(/^10:00:00\.000;0,00;/);
    expect(() =>
      simulateFamily({
        family: "petrol-with-meter",
        seed: 6,
        protocol: SHORT,
        recorder: { ...polled, style: { ...style, delimiter: "," } },
      }),
    ).toThrow("comma");
  });

  it("shows pounds and inches when asked to: the same readings in other units", () => {
    const polled = standardTester("petrol-with-meter");
    const one = (unitSystem: "metric" | "imperial") =>
      table(
        simulateFamily({
          family: "petrol-with-meter",
          seed: 6,
          protocol: SHORT,
          recorder: { ...polled, style: { ...PLAIN_STYLE, unitSystem } },
        }).recording.text,
      );
    const metric = one("metric");
    const imperial = one("imperial");
    expect(imperial[0]!.slice(2, 4)).toEqual([
      "Intake manifold absolute pressure [psi]",
      "Intake air temperature [°F]",
    ]);
    for (let i = 20; i < metric.length; i += 37) {
      const [, , kiloPascal, celsius] = metric[i]!.map(Number);
      const [, , psi, fahrenheit] = imperial[i]!.map(Number);
      expect(Math.abs(psi! * 6.894757 - kiloPascal!)).toBeLessThan(0.04);
      expect(Math.abs(fahrenheit! - 32 - 1.8 * celsius!)).toBeLessThanOrEqual(0.5);
    }
  });

  it("logs from 1 to 100 Hz: between the rows of the truth straight, so that no two samples of a changing channel are copies", () => {
    const at = (rate: number) => {
      const recorder = { kind: "logger", rate, style: PLAIN_STYLE, channels: ["roadSpeed"] } as const;
      const { text } = simulateFamily({ family: "petrol-with-meter", seed: 6, protocol: SHORT, recorder }).recording;
      return table(text).slice(1);
    };
    expect(at(1).map((row) => Number(row[0]))).toEqual(Array.from({ length: 33 }, (_, i) => i));
    const gainingSpeed = at(100)
      .slice(1520, 1660)
      .map((row) => Number(row[1]));
    expect(gainingSpeed.slice(1).every((speed, i) => speed > gainingSpeed[i]!)).toBe(true);
  });

  it("samples all channels of a logger in every row at its rate", () => {
    const { recording, truth } = simulateFamily({
      family: "boosted-both",
      seed: 6,
      protocol: SHORT,
      recorder: workshopLogger(10),
    });
    const rows = table(recording.text).slice(1);
    expect(rows.every((row) => row.every((cell) => cell !== ""))).toBe(true);
    expect(Number(rows[1]![0]) - Number(rows[0]![0])).toBeCloseTo(0.1, 9);
    expect(rows.length).toBe(Math.floor((truth.rows - 1) * truth.step * 10 + 1e-9) + 1);
  });
});
