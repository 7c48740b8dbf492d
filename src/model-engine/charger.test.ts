import { describe, expect, it } from "vitest";
import { type ChargerInputs, mapRatio, newCharger, stepCharger } from "./charger.ts";
import { BOOSTED_BOTH } from "./families.ts";

const charger = BOOSTED_BOTH.charger!;
const still: ChargerInputs = {
  wantedRatio: 1.8,
  exhaustFlow: 0.1,
  intakeFlow: 0.1,
  lambda: 1,
  inletPressure: 100e3,
  chargePressure: 150e3,
  manifoldPressure: 148e3,
  largestFlow: 0.2,
};

function settledFor(seconds: number, u: ChargerInputs, state = newCharger()) {
  for (let i = 0; i < seconds / 0.02; i++) stepCharger(charger, state, u, 0.02);
  return state;
}

describe("stepCharger", () => {
  it("holds the wanted ratio by its wastegate where there is exhaust to spare, and falls short of it where there is not", () => {
    const held = settledFor(20, still);
    expect(held.ratio).toBeCloseTo(1.8, 2);
    expect(held.wastegate).toBeGreaterThan(0.2);
    const starved = settledFor(20, { ...still, exhaustFlow: 0.02, intakeFlow: 0.02 });
    expect(starved.wastegate).toBeCloseTo(0, 6);
    expect(starved.ratio).toBeLessThan(1.5);
    expect(settledFor(20, { ...still, wantedRatio: 1 }).ratio).toBeLessThan(1.05);
  });

  it("settles after a step without swinging more than 8 % past the wanted ratio, at low and at full flow", () => {
    for (const flow of [0.08, 0.12, 0.2]) {
      const state = newCharger();
      let highest = 0;
      for (let i = 0; i < 500; i++) {
        stepCharger(charger, state, { ...still, exhaustFlow: flow, intakeFlow: flow }, 0.02);
        highest = Math.max(highest, state.ratio);
      }
      expect(highest, `${flow}`).toBeLessThan(1.8 * 1.08);
      expect(state.ratio, `${flow}`).toBeCloseTo(1.8, 2);
    }
  });

  it("is bounded by its map: no ratio at choke, none without flow, more with speed between", () => {
    expect(mapRatio(charger, 1, 1.4)).toBe(1);
    expect(mapRatio(charger, 1, 0)).toBe(1);
    expect(mapRatio(charger, 0, 0.5)).toBe(1);
    expect(mapRatio(charger, 0.9, 0.5)).toBeGreaterThan(mapRatio(charger, 0.6, 0.5));
    expect(mapRatio(charger, 1, 0.02)).toBeLessThan(1.1); // surge
    expect(mapRatio(charger, 1.2, 0.4)).toBeLessThan(1 + 1.5 * 0.8 * 1.2 + 1e-9);
  });

  it("opens the bypass when the throttle shuts, and the ratio falls faster than the shaft", () => {
    const state = settledFor(20, still);
    const { spin, ratio } = state;
    settledFor(0.4, { ...still, intakeFlow: 0.01, manifoldPressure: 30e3 }, state);
    expect(state.bypass).toBeGreaterThan(0.99);
    expect((state.ratio - 1) / (ratio - 1)).toBeLessThan(0.75);
    expect(state.spin / spin).toBeGreaterThan(0.7);
  });
});
