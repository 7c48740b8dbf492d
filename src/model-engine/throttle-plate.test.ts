import { describe, expect, it } from "vitest";
import { fullArea, throttleArea, throttleOpening } from "./throttle-plate.ts";

describe("throttle plate", () => {
  it("gives back the opening that made the area, from closed to fully open", () => {
    for (const opening of [0, 0.01, 0.05, 0.2, 0.5, 0.8, 1]) {
      expect(throttleOpening(0.06, throttleArea(0.06, opening))).toBeCloseTo(opening, 6);
    }
    expect(throttleArea(0.06, 0)).toBeCloseTo(0, 12);
    expect(throttleArea(0.06, 1)).toBeCloseTo(fullArea(0.06), 12);
  });
});
