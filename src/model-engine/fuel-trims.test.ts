import { describe, expect, it } from "vitest";
import { newTrims, stepTrims, trimCell, trimFactor } from "./fuel-trims.ts";

const dt = 0.02;
/** A plant with 0.4 s of transport and a first-order lag: lambda = error / trims. */
function settle(probe: "narrow" | "wide", error: number, seconds: number) {
  const state = newTrims();
  let lambdaRead = error;
  const line = new Array<number>(20).fill(error);
  const shorts: number[] = [];
  const input = { probe, lambdaCommanded: 1, cell: 3, limit: 0.25, learningTime: 20 };
  for (let i = 0; i < seconds / dt; i++) {
    stepTrims(state, { ...input, lambdaRead }, dt);
    line.push(error / trimFactor(state, { ...input, lambdaRead }));
    lambdaRead += (line.shift()! - lambdaRead) * (1 - Math.exp(-dt / 0.3));
    shorts.push(state.short);
  }
  return { state, lambdaRead, shorts };
}

describe("fuel trims", () => {
  it("bring the mixture to the command and move what stays into the cell, with either probe", () => {
    for (const probe of ["narrow", "wide"] as const) {
      const { state, lambdaRead, shorts } = settle(probe, 1.12, 150);
      expect(Math.abs(lambdaRead - 1)).toBeLessThan(0.02);
      expect(Math.abs(state.long[3]! - 0.12)).toBeLessThan(0.012);
      const late = shorts.slice(-500);
      expect(Math.abs(late.reduce((sum, s) => sum + s, 0) / late.length)).toBeLessThan(0.01);
      expect(state.long.filter((value) => value !== 0).length).toBe(1);
    }
  });

  it("swing in a limit cycle with a narrow probe", () => {
    const late = settle("narrow", 1, 60).shorts.slice(-1000);
    const swing = Math.max(...late) - Math.min(...late);
    expect(swing).toBeGreaterThan(0.02);
    expect(swing).toBeLessThan(0.12);
  });

  it("stop at their limit, each of them", () => {
    const { state } = settle("wide", 2, 300);
    expect(state.short).toBeCloseTo(0.25, 9);
    expect(state.long[3]).toBeCloseTo(0.25, 9);
  });

  it("have a cell of their own for each step of speed and load", () => {
    const cells = [10, 25, 45, 80].flatMap((speed) => [0.2, 0.4, 0.5, 0.8].map((load) => trimCell(speed, load)));
    expect(new Set(cells).size).toBe(16);
  });
});
