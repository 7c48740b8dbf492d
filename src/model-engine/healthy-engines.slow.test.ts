import { describe, expect, it } from "vitest";
import { settledTrims } from "./settled-trims.ts";

describe("healthy engines", () => {
  it("keep their trims inside 6 % when warm, in closed loop and steady (thirty engines of each family)", () => {
    for (const family of ["petrol-with-meter", "petrol-with-pressure", "boosted-both"] as const) {
      for (let seed = 2; seed <= 32; seed++) {
        for (const trim of settledTrims(family, seed)) {
          expect(Math.abs(trim), `${family} ${seed}`).toBeLessThan(0.06);
        }
      }
    }
  });
});
