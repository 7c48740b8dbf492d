import { describe, expect, it } from "vitest";
import { propagateUncertainty } from "./uncertainty-budget.ts";

const product = ([a = 0, b = 0]: readonly number[]): number => a * b;

describe("propagateUncertainty", () => {
  const inputs = [
    { name: "a", value: 10, standardUncertainty: 0.1 },
    { name: "b", value: 3, standardUncertainty: 0.06 },
  ];

  it("adds relative uncertainties of a product in squares and orders the budget by size", () => {
    const budget = propagateUncertainty(product, inputs);
    expect(budget.value).toBe(30);
    expect(budget.standardUncertainty / 30).toBeCloseTo(Math.hypot(0.01, 0.02), 12);
    expect(budget.lines.map((line) => line.name)).toEqual(["b", "a"]);
    expect(budget.lines.reduce((sum, line) => sum + line.share, 0)).toBeCloseTo(1, 12);
    expect(budget.coverageFactor).toBeCloseTo(1.96, 3);
  });

  it("adds contributions one to one when inputs move together, and takes them off each other when they move apart", () => {
    expect(propagateUncertainty(product, inputs, () => 1).standardUncertainty / 30).toBeCloseTo(0.03, 12);
    expect(propagateUncertainty(product, inputs, () => -1).standardUncertainty / 30).toBeCloseTo(0.01, 12);
  });

  it("gives a wider factor where the dominant input is known from few readings", () => {
    const few = propagateUncertainty(product, [inputs[0]!, { ...inputs[1]!, degreesOfFreedom: 4 }]);
    expect(few.effectiveDegreesOfFreedom).toBeGreaterThan(4);
    expect(few.coverageFactor).toBeGreaterThan(2.3);
  });

  it("is exact for an input without uncertainty", () => {
    const budget = propagateUncertainty(product, [{ name: "a", value: 2, standardUncertainty: 0 }, inputs[1]!]);
    expect(budget.lines.find((line) => line.name === "a")?.share).toBe(0);
  });
});
