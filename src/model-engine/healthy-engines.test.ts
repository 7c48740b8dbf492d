import { describe, expect, it } from "vitest";
import { settledTrims } from "./settled-trims.ts";
import { FAMILIES } from "./standard-recorders.ts";

describe("healthy engines", () => {
  it("keep their trims inside 6 % when warm, in closed loop and steady (an engine of each family)", () => {
    for (const family of FAMILIES.filter((one) => one !== "diesel-with-egr")) {
      for (const trim of settledTrims(family, 1)) expect(Math.abs(trim), family).toBeLessThan(0.06);
    }
  });
});
