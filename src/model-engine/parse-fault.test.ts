import { describe, expect, it } from "vitest";
import { parseFault } from "./parse-fault.ts";

const reason = (text: string) => {
  const result = parseFault(text);
  return result.ok ? "ok" : result.reason;
};

describe("parseFault", () => {
  it("reads cause, size, unit and pivot", () => {
    expect(parseFault("manifold-leak=3.5 mm2")).toEqual({ ok: true, value: { cause: "manifold-leak", size: 3.5 } });
    expect(parseFault(" meter-fouled = -0.12 ")).toEqual({ ok: true, value: { cause: "meter-fouled", size: -0.12 } });
    expect(parseFault("map-scaled=0.1 about zero")).toEqual({
      ok: true,
      value: { cause: "map-scaled", size: 0.1, pivot: "zero" },
    });
  });

  it("refuses what it cannot read, does not know, or cannot run with, and says what would do", () => {
    expect(reason("manifold-leak")).toBe("fault-unreadable");
    expect(reason("manifold-leak=3 kPa")).toBe("fault-unreadable");
    expect(reason("manifold-leak=3 about zero")).toBe("fault-unreadable");
    expect(reason("constructor=1")).toBe("fault-unknown");
    expect(reason("flux-capacitor=1")).toBe("fault-unknown");
    expect(reason("manifold-leak=-1")).toBe("fault-out-of-range");
    expect(reason("misfire=1")).toBe("fault-out-of-range");
  });
});
