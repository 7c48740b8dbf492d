// What the engine standing says, against differences worked out by hand.
import { describe, expect, it } from "vitest";
import type { KeyOnReading } from "../../channels/index.ts";
import type { EngineDescription } from "../../engine/index.ts";
import { buildTallyModel, defaultAssumptions, type StandingKind } from "../index.ts";
import { ENGINE, point, type Readings, reading } from "../test-support/invented-points.ts";

const A = defaultAssumptions();
const RUNNING = point(0, ["warm", "idle", "closed-loop"], {
  engineSpeed: 13,
  manifoldPressure: 35e3,
  intakeTemperature: 300,
  meterVoltage: 1.4,
  shortTrim: 0.02,
});
const curve = {
  signalUnit: "V",
  flow: "mass",
  at: null,
  points: [
    [1, 0],
    [1.2, 1e-3],
    [2, 0.01],
    [4.8, 0.2],
  ],
} as const;
const METER = { id: "meter", kind: "hot-wire", bore: null, reference: null, bank: null, curve } as const;

function keyOn(start: number, readings: Readings): KeyOnReading {
  return { recording: 0, start, end: start + 8, readings: point(0, [], readings).readings };
}

function standing(kind: StandingKind, at: readonly KeyOnReading[], engine: Partial<EngineDescription> = {}) {
  const described = { ...ENGINE, meters: [METER], ...engine };
  return buildTallyModel({ points: [RUNNING], keyOn: at }, described, A).standing.filter((s) => s.kind === kind);
}

describe("the pressure sensor against the barometer", () => {
  const passage = (start: number, pressure: number) =>
    keyOn(start, { manifoldPressure: reading(pressure, 0.001), barometer: reading(99e3, 0) });

  it("is one fact from key on and run down together, the barometer's error in it once", () => {
    const both = standing("pressure-against-barometer", [passage(0, 101e3), passage(240, 102e3)]);
    expect(both).toHaveLength(1);
    const [first, second] = [101 ** 2 + 100 ** 2, 102 ** 2 + 100 ** 2];
    const mean = (2000 / first + 3000 / second) / (1 / first + 1 / second);
    expect(both[0]!.reading).toBeCloseTo(mean / 1000, 9);
    expect(both[0]!.variance).toBeCloseTo((1 / (1 / first + 1 / second) + A.barometer ** 2) / 1e6, 9);
    expect(both[0]!.where).toBe("recording 1, 0 to 8 s and 1 more");
  });

  it("takes the barometer stated for the site where none is recorded, and says nothing without either", () => {
    const bare = [keyOn(0, { manifoldPressure: 101e3 })];
    expect(standing("pressure-against-barometer", bare)[0]!.reading).toBeCloseTo(1, 9);
    const nowhere = { site: { barometer: null, outside: null } };
    expect(standing("pressure-against-barometer", bare, nowhere)).toEqual([]);
  });
});

describe("the meter at no flow", () => {
  it("is held against its curve's point of no flow, and a heated one forgives a draught", () => {
    const [seen] = standing("meter-at-zero-flow", [keyOn(0, { meterVoltage: reading(1.12, 0) })]);
    expect(seen).toMatchObject({ unit: "V", meter: "meter" });
    expect(seen!.reading).toBeCloseTo(0.12, 9);
    // 0.02 g/s of draught is a fiftieth of the first step of 0.2 V
    expect(seen!.variance).toBeCloseTo(A.meterRestVoltage ** 2 + 0.004 ** 2, 9);
  });

  it("is not known from a curve that begins above no flow", () => {
    const begun = { ...METER, curve: { ...curve, points: curve.points.slice(1) } };
    expect(standing("meter-at-zero-flow", [keyOn(0, { meterVoltage: 1.12 })], { meters: [begun] })).toEqual([]);
  });

  it("is a reported flow where only that is recorded; a zero, or the first point of the curve, is no statement", () => {
    const [seen] = standing("meter-at-zero-flow", [keyOn(0, { meterFlow: reading(6e-4, 0) })]);
    expect(seen).toMatchObject({ unit: "g/s", meter: "meter" });
    expect(seen!.reading).toBeCloseTo(0.6, 9);
    expect(seen!.variance).toBeCloseTo((A.meterRestFlow * 1e3) ** 2, 9);
    expect(standing("meter-at-zero-flow", [keyOn(0, { meterFlow: 0 })])).toEqual([]);
    const begun = { ...METER, curve: { ...curve, points: curve.points.slice(1) } };
    expect(standing("meter-at-zero-flow", [keyOn(0, { meterFlow: 1e-3 })], { meters: [begun] })).toEqual([]);
  });
});

describe("the intake temperature after a night", () => {
  const night = (readings: Readings, start = 0) =>
    standing("intake-temperature-at-cold-soak", [
      keyOn(start, {
        coolantTemperature: 285,
        intakeTemperature: reading(299, 0),
        ambientTemperature: 287,
        ...readings,
      }),
    ]);

  it("is held against coolant and outside air that agree", () => {
    const [seen] = night({});
    expect(seen!.reading).toBeCloseTo(299 - 286, 9);
    expect(seen!.variance).toBeCloseTo(A.temperatureSensor ** 2 * 1.5 + A.soakSpread ** 2, 9);
  });

  it("says nothing of a warm engine, of one whose coolant stands alone, nor later in a recording", () => {
    expect(night({ coolantTemperature: 330 })).toEqual([]);
    expect(night({ ambientTemperature: 292 })).toEqual([]);
    expect(night({}, 60)).toEqual([]);
  });
});
