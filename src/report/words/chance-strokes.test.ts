import { describe, expect, it } from "vitest";
import { chanceStrokes } from "./chance-strokes.ts";

describe("chanceStrokes", () => {
  it("cuts one stroke for each tenth", () => {
    expect([0, 0.04, 0.06, 0.5, 0.906, 1].map(chanceStrokes)).toEqual([0, 0, 1, 5, 9, 10]);
  });
});
