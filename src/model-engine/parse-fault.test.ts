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

  it("reads what else a fault has: its bank, its error at 30 %, what is missing at the largest flow", () => {
    expect(parseFault("exhaust-air-added=0.4 g/s bank 2")).toEqual({
      ok: true,
      value: { cause: "exhaust-air-added", size: 0.4, bank: 2 },
    });
    expect(parseFault("meter-curve-wrong=0.1 with -0.05 at 30%")).toEqual({
      ok: true,
      value: { cause: "meter-curve-wrong", size: 0.1, errorAt30: -0.05 },
    });
    expect(parseFault("fuel-supply-limited=2 g/s losing 0.3")).toEqual({
      ok: true,
      value: { cause: "fuel-supply-limited", size: 2, loss: 0.3 },
    });
  });

  it("refuses what says nothing of that cause, and shows how it is written", () => {
    for (const text of [
      "manifold-leak=3 mm2 bank 1",
      "misfire=0.1 bank 3",
      "misfire=0.1 losing 0.2",
      "meter-curve-wrong=0.1 with 0.05 at 40 %",
      "meter-scaled=0.9 with 0.05 at 30 %",
      "misfire=0.1 bank 2 bank 1",
    ])
      expect(reason(text), text).toBe("fault-unreadable");
    expect(reason("meter-curve-wrong=0.1 with 0.6 at 30 %")).toBe("fault-out-of-range");
    expect(reason("fuel-supply-limited=2 losing 1")).toBe("fault-out-of-range");
    const told = parseFault("fuel-supply-limited=2 g/s loosing 0.3");
    expect(told.ok ? "" : told.remedy).toContain('"fuel-supply-limited=2 g/s losing 0.3"');
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
