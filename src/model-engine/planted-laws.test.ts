import { describe, expect, it } from "vitest";
import {
  exhaustAirFlow,
  pulsationShare,
  regulatorShare,
  supplyShare,
  timingShare,
  wrongCurveShare,
} from "./planted-laws.ts";

describe("laws of planted faults", () => {
  it("late valves lose air at low speed and win some at high speed; early ones the other way", () => {
    expect(timingShare(10, 15, 100)).toBeLessThan(0.97);
    expect(timingShare(10, 95, 100)).toBeGreaterThan(1.02);
    expect(timingShare(-10, 15, 100)).toBeGreaterThan(1.03);
    expect(timingShare(0, 15, 100)).toBe(1);
  });

  it("a weak supply gives all below its onset and misses the stated share at the largest flow", () => {
    const supply = { onset: 3e-3, loss: 0.3 };
    expect(supplyShare(supply, 2.9e-3, 7e-3)).toBe(1);
    expect(supplyShare(supply, 5e-3, 7e-3)).toBeCloseTo(0.85, 12);
    expect(supplyShare(supply, 7e-3, 7e-3)).toBeCloseTo(0.7, 12);
  });

  it("a regulator without its hose is too high by the stated pressure at idle and by nothing at full load", () => {
    const at = { riseAtIdle: 70e3, ambientPressure: 101e3, injectorPressure: 300e3 };
    expect(regulatorShare({ ...at, manifoldPressure: 31e3 })).toBeCloseTo(Math.sqrt(370 / 300), 12);
    expect(regulatorShare({ ...at, manifoldPressure: 101e3 })).toBe(1);
    expect(regulatorShare({ ...at, manifoldPressure: 180e3 })).toBeLessThan(1);
  });

  it("air that enters the exhaust is the stated flow at idle and fades, against the air, with the square of it", () => {
    expect(exhaustAirFlow(0.3e-3, 3e-3, 3e-3)).toBeCloseTo(0.3e-3, 12);
    const share = (flow: number) => exhaustAirFlow(0.3e-3, flow, 3e-3) / flow;
    expect(share(12e-3) / share(3e-3)).toBeCloseTo(1 / 16, 12);
  });

  it("pulsation is at its worst at low speed wide open and nothing at part load or high speed", () => {
    expect(pulsationShare(-0.2, 25, 0.98)).toBeCloseTo(0.8, 12);
    expect(pulsationShare(-0.2, 25, 0.6)).toBe(1);
    expect(pulsationShare(-0.2, 80, 0.98)).toBeCloseTo(1, 9);
  });

  it("a wrong curve errs as stated at 30 and 70 % of the largest flow", () => {
    const error = { at30: 0.1, at70: -0.05 };
    expect(wrongCurveShare(error, 0.3)).toBeCloseTo(1.1, 12);
    expect(wrongCurveShare(error, 0.7)).toBeCloseTo(0.95, 12);
    expect(wrongCurveShare(error, 0)).toBe(wrongCurveShare(error, 0.1));
  });
});
