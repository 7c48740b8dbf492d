import { describe, expect, it } from "vitest";
import { typeset } from "./typeset.ts";

describe("typeset", () => {
  it("raises the powers of units after numbers and holds a per cent sign to its number, and touches nothing else", () => {
    expect(typeset("Area: 3.47 mm2 (between 2.3 and 4.6), 1998 cm3, 5 m3/h")).toBe(
      "Area: 3.47 mm² (between 2.3 and 4.6), 1998 cm³, 5 m³/h",
    );
    expect(typeset("13 % low (± 2.2 %)")).toBe("13\u202f% low (± 2.2\u202f%)");
    expect(typeset("column mm2 of the file, O2 and 3 m2x")).toBe("column mm2 of the file, O2 and 3 m2x");
  });
});
