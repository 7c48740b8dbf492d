import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { QUALITY } from "../../quantities/index.ts";
import type { ChannelSet, RecognisedChannel } from "../channel-set.ts";
import type { QuantityId } from "../quantity-id.ts";
import { findOperatingPoints } from "./find-operating-points.ts";
import { readWindow } from "./read-window.ts";

function channel(
  quantity: QuantityId,
  unit: RecognisedChannel["unit"],
  times: number[],
  values: number[],
  more: Partial<RecognisedChannel> = {},
): RecognisedChannel {
  return {
    quantity,
    unit,
    name: quantity,
    bank: null,
    instance: 1,
    times: Float64Array.from(times),
    values: Float64Array.from(values),
    quality: new Uint8Array(times.length),
    source: { column: 1, header: quantity, unitText: null, unitUsed: unit },
    resolution: null,
    pollInterval: 0.2,
    timeSkew: 0,
    confidence: 1,
    reasons: [],
    standing: "measured",
    standingReason: null,
    ...more,
  };
}

const clock = (seconds: number, step = 0.2) => Array.from({ length: Math.floor(seconds / step) }, (_, i) => i * step);

describe("a reading over a window", () => {
  it("takes the line at the middle of the window, whatever its slope", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -5, max: 5, noNaN: true }),
        fc.double({ min: 10, max: 100, noNaN: true }),
        (slope, level) => {
          const t = clock(10);
          const reading = readWindow(
            channel(
              "manifoldPressure",
              "Pa",
              t,
              t.map((x) => level + slope * (x - 4.9)),
            ),
            0,
            9.8,
            5,
          )!;
          expect(reading.mean).toBeCloseTo(level, 6);
          expect(reading.slope).toBeCloseTo(slope, 6);
        },
      ),
      { seed: 4, numRuns: 60 },
    );
  });
  it("does not average quantisation away, and pays for a time skew with the slope", () => {
    const t = clock(60);
    const still = readWindow(
      channel(
        "manifoldPressure",
        "Pa",
        t,
        t.map(() => 35_000),
        { resolution: 1000 },
      ),
      0,
      60,
      5,
    )!;
    expect(still.variance).toBeCloseTo(1000 ** 2 / 12, 3);
    const moving = readWindow(
      channel(
        "manifoldPressure",
        "Pa",
        t,
        t.map((x) => 35_000 + 100 * x),
        { timeSkew: 0.5 },
      ),
      0,
      60,
      5,
    )!;
    expect(moving.variance).toBeCloseTo((100 * 0.5) ** 2, 3);
  });
  it("lets one wild sample count for little", () => {
    const t = clock(20);
    const values = t.map((_, i) => 100 + Math.sin(i * 1.7));
    values[50] = 1000;
    expect(Math.abs(readWindow(channel("engineSpeed", "1/s", t, values), 0, 20, 5)!.mean - 100)).toBeLessThan(1);
  });
  it("calls half the range the doubt of two or three readings", () => {
    const reading = readWindow(channel("meterFlow", "kg/s", [0, 1, 2], [1, 2, 3]), 0, 3, 5)!;
    expect(reading.variance).toBeCloseTo(1, 12);
  });
  it("leaves out samples that are not good, and answers null where none is near", () => {
    const one = channel("meterFlow", "kg/s", [0, 1, 2, 3, 4], [1, 99, 1, 1, 1]);
    one.quality[1] = QUALITY.outsideValidity;
    expect(readWindow(one, 0, 5, 5)!.mean).toBeCloseTo(1, 12);
    expect(readWindow(one, 100, 110, 5)).toBeNull();
  });
});

describe("operating points", () => {
  const idleThenCruise = (): ChannelSet => {
    const t = clock(60);
    const idle = (x: number) => x < 30;
    return {
      channels: [
        channel(
          "engineSpeed",
          "1/s",
          t,
          t.map((x, i) => (idle(x) ? 13 : 42) + 0.05 * (i % 3)),
        ),
        channel(
          "manifoldPressure",
          "Pa",
          t,
          t.map((x, i) => (idle(x) ? 35_000 : 60_000) + 100 * (i % 2)),
        ),
      ],
      unrecognised: [],
      stretches: [{ start: 0, end: 60, why: null }],
      duration: 60,
      rows: t.length,
      timeBasis: "",
      warnings: [],
    };
  };
  it("never reach across a change of running, nor across a gap in time", () => {
    const { points } = findOperatingPoints(idleThenCruise(), [], 0, 1);
    expect(points.length).toBeGreaterThan(2);
    for (const p of points) expect(p.end <= 30.3 || p.start >= 29.7).toBe(true);
    const broken = {
      ...idleThenCruise(),
      stretches: [
        { start: 0, end: 14, why: null },
        { start: 16, end: 60, why: "gap" },
      ],
    };
    for (const p of findOperatingPoints(broken, [], 0, 1).points) expect(p.end <= 14 || p.start >= 16).toBe(true);
  });
  it("come in the order of time, with ids that go on", () => {
    const { points } = findOperatingPoints(idleThenCruise(), [], 2, 7);
    expect(points[0]).toMatchObject({ id: 7, recording: 2 });
    for (let i = 1; i < points.length; i++) expect(points[i]!.start).toBeGreaterThan(points[i - 1]!.start);
  });
  it("are not made of a standing engine; its sensors are read against the air instead", () => {
    const t = clock(20);
    const set: ChannelSet = {
      ...idleThenCruise(),
      channels: [
        channel(
          "engineSpeed",
          "1/s",
          t,
          t.map(() => 0),
        ),
        channel(
          "manifoldPressure",
          "Pa",
          t,
          t.map(() => 99_000),
        ),
      ],
      stretches: [{ start: 0, end: 20, why: null }],
      duration: 20,
    };
    const data = findOperatingPoints(set, [{ state: "key-on", start: 0, end: 20, reason: "" }], 0, 1);
    expect(data.points).toEqual([]);
    expect(data.keyOn[0]!.readings.get("manifoldPressure")!.mean).toBeCloseTo(99_000, 6);
  });
});
