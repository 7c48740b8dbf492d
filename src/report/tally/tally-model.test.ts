import { describe, expect, it } from "vitest";
import { HEALTHY } from "../fixtures/healthy.ts";
import { LEAK } from "../fixtures/leak.ts";
import { tallyModel } from "./tally-model.ts";
import { tallyNotes } from "./tally-notes.ts";

const leak = tallyModel(LEAK);

describe("tallyModel", () => {
  it("places every witness of every stretch at ln(witness / air), inside the axes", () => {
    expect(leak?.marks.length).toBe(28 * 3);
    for (const mark of leak?.marks ?? []) {
      const said = mark.point.witnesses[mark.witness];
      expect(Math.exp(mark.departure) * mark.air).toBeCloseTo(said?.massFlow_g_per_s ?? Number.NaN, 9);
      for (const share of [leak?.x(mark.air), leak?.y(mark.departure)]) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
    }
  });

  it("draws bars of 90 %", () => {
    const mark = leak?.marks.find((m) => m.witness === "meter");
    expect(mark?.half).toBeCloseTo(1.645 * 0.012, 12);
  });

  it("draws low below high, nought among its ticks, and its ticks within the axis", () => {
    expect(leak?.y(-0.1)).toBeGreaterThan(leak?.y(0.02) ?? Number.NaN);
    expect(leak?.yTicks).toContain(0);
    for (const tick of leak?.yTicks ?? []) {
      expect(leak?.y(Math.log1p(tick))).toBeGreaterThan(-1e-9);
      expect(leak?.y(Math.log1p(tick))).toBeLessThan(1 + 1e-9);
    }
  });

  it("draws pale what is far less certain than the rest, and nothing where all are alike", () => {
    expect(leak?.vagueFrom).toBeNull();
    const points = LEAK.result.operatingPoints.map((p, k) => ({
      ...p,
      witnesses: { meter: { massFlow_g_per_s: p.air_g_per_s ?? 1, relativeSd: k % 2 === 0 ? 0.01 : 0.2 } },
    }));
    const model = tallyModel({ ...LEAK, result: { ...LEAK.result, operatingPoints: points } });
    expect(model?.vagueFrom).toBeCloseTo(3 * 1.645 * 0.01, 12);
  });

  it("leaves a vague mark out of the picture that would flatten the rest, and counts it", () => {
    const points = LEAK.result.operatingPoints.map((p, k) => ({
      ...p,
      witnesses: {
        meter: { massFlow_g_per_s: p.air_g_per_s ?? 1, relativeSd: 0.01 },
        throttle: { massFlow_g_per_s: (p.air_g_per_s ?? 1) * (k === 0 ? 10 : 1.02), relativeSd: k === 0 ? 1 : 0.01 },
      },
    }));
    const model = tallyModel({ ...LEAK, result: { ...LEAK.result, operatingPoints: points } });
    expect(model?.outside.map((m) => m.witness)).toEqual(["throttle"]);
    expect(model?.marks.length).toBe(2 * points.length - 1);
    expect(Math.max(...(model?.yTicks ?? []))).toBeLessThan(0.2);
    expect(leak?.outside).toEqual([]);
  });

  it("counts stretches without a common answer instead of drawing them", () => {
    const [first, ...rest] = LEAK.result.operatingPoints;
    if (first === undefined) throw new Error("the fixture has no points");
    const without = { ...first, air_g_per_s: null };
    const model = tallyModel({ ...LEAK, result: { ...LEAK.result, operatingPoints: [without, ...rest] } });
    expect([model?.pointsShown, model?.pointsWithout]).toEqual([27, 1]);
    expect(tallyModel({ ...LEAK, result: { ...LEAK.result, operatingPoints: [without] } })).toBeNull();
  });

  it("survives a witness that is far off without an endless axis", () => {
    const points = HEALTHY.result.operatingPoints.map((p) => ({
      ...p,
      witnesses: { meter: { massFlow_g_per_s: (p.air_g_per_s ?? 1) * 0.01, relativeSd: 0.02 } },
    }));
    const model = tallyModel({ ...HEALTHY, result: { ...HEALTHY.result, operatingPoints: points } });
    expect(model?.yTicks.every(Number.isFinite)).toBe(true);
    expect(model?.y(Math.log(0.01))).toBeLessThanOrEqual(1);
  });
});

describe("tallyNotes", () => {
  it("letters the evidence that speaks of few stretches", () => {
    expect(tallyNotes(LEAK)).toEqual([
      {
        letter: "a",
        witness: "meter",
        points: [12, 13],
        text: "1,200 rev/min, wide open: an offset would show here too.",
      },
    ]);
  });
});
