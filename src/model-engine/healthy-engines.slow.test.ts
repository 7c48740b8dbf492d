import { describe, expect, it } from "vitest";
import { settledTrims } from "./settled-trims.ts";
import { FAMILIES } from "./standard-recorders.ts";

describe("healthy engines", () => {
  it("keep their trims inside 6 % when warm, in closed loop and steady (thirty engines of each family)", () => {
    for (const family of FAMILIES.filter((one) => one !== "diesel-with-egr")) {
      for (let seed = 2; seed <= 32; seed++) {
        for (const trim of settledTrims(family, seed)) {
          expect(Math.abs(trim), `${family} ${seed}`).toBeLessThan(0.06);
        }
      }
    }
  });
});
