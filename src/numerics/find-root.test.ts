import { describe, expect, it } from "vitest";
import { findRoot } from "./find-root.ts";

describe("findRoot", () => {
  it("finds a simple root to the last bits", () => {
    const outcome = findRoot((x) => x * x * x - 2, { low: 0, high: 2 });
    expect(outcome.status === "found" && outcome.root).toBeCloseTo(Math.cbrt(2), 15);
  });

  it("finds the root of a steep and of a flat function", () => {
    const steep = findRoot((x) => Math.expm1(50 * (x - 0.3)), { low: -1, high: 1 });
    const flat = findRoot((x) => (x - 0.3) ** 5, { low: -1, high: 1 });
    expect(steep.status === "found" && steep.root).toBeCloseTo(0.3, 12);
    expect(flat.status === "found" && flat.root).toBeCloseTo(0.3, 2);
  });

  it("takes an end that is a root", () => {
    expect(findRoot((x) => x, { low: 0, high: 1 })).toMatchObject({ status: "found", root: 0 });
    expect(findRoot((x) => x - 1, { low: 0, high: 1 })).toMatchObject({ status: "found", root: 1 });
  });

  it("answers no-bracket where the ends have one sign or are not numbers", () => {
    expect(findRoot((x) => x * x + 1, { low: -1, high: 1 }).status).toBe("no-bracket");
    expect(findRoot(() => Number.NaN, { low: -1, high: 1 }).status).toBe("no-bracket");
  });
});
