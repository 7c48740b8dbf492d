// Sizes as they stand in the result: in the unit told, the law's others beside the cause's own.
import { describe, expect, it } from "vitest";
import { modelOf } from "../../../test/signatures/signature-models.ts";
import { CATALOGUE, type SizeNode } from "../../findings/index.ts";
import { findingSizes } from "./finding-sizes.ts";

const model = modelOf();
const sizes = (id: string, nodes: readonly SizeNode[]) =>
  findingSizes({ cause: CATALOGUE.find((c) => c.id === id)!, nodes }, model);

describe("sizes of a finding", () => {
  it("are one for most causes, in the unit of the table", () => {
    const found = sizes("map-biased", [
      { size: 2000, shape: 0, weight: 0.5 },
      { size: 4000, shape: 0, weight: 0.5 },
    ]);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ unit: "kPa", value: 3 });
  });

  it("tell a wrong curve at 70 and at 30 % of the largest flow", () => {
    const [at70, at30] = sizes("meter-curve-wrong", [{ size: -0.1, shape: -1.5, weight: 1 }]);
    expect(at70).toMatchObject({ value: -0.1, unit: "1" });
    expect(at30).toMatchObject({ name: "error at 30 % of the largest flow", value: 0.15, unit: "1" });
  });

  it("put the flow from which fuel falls short before the loss, as one of the values it can have", () => {
    const [threshold, loss] = sizes("fuel-supply-limited", [
      { size: 0.2, shape: 0.4, weight: 0.3 },
      { size: 0.3, shape: 0.7, weight: 0.7 },
    ]);
    const largest = 70 / 14.6;
    expect(threshold!.unit).toBe("g/s");
    expect(threshold!.value).toBeCloseTo(0.7 * largest, 1);
    expect(threshold!.low90).toBeCloseTo(0.4 * largest, 1);
    expect(threshold!.high90).toBeCloseTo(0.7 * largest, 1);
    expect(loss).toMatchObject({ unit: "1", name: "loss at the largest flow" });
  });

  it("say about which pressure a reading is scaled: none between the two", () => {
    const [, pivot] = sizes("map-scaled", [
      { size: -0.1, shape: 0, weight: 0.45 },
      { size: 0.1, shape: 1, weight: 0.55 },
    ]);
    expect(pivot).toEqual({ name: "pivot", unit: "kPa", value: 0, low90: 0, high90: 99 });
  });
});
