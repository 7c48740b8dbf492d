/**
 * The signs and limits of the catalogue, air side and fuel side: what each planted fault does to the witnesses and to the trims, under
 * the meter and the pressure strategy. Engines as drawn, so that nothing but the fault departs.
 */
import { describe, expect, it } from "vitest";
import type { Fault } from "./fault.ts";
import { AS_METER, AS_PRESSURE, shiftOf } from "./signature-rig.ts";

const shift = (fault: Fault, strategy: "meter" | "pressure" = "meter") =>
  shiftOf(fault, strategy === "meter" ? AS_METER : AS_PRESSURE);

/** Close enough to nothing: limit cycle of the narrow probe, purge, idle speed a little off. */
const NOTHING = 0.012;
const near = (x: number, expected: number, tolerance = NOTHING) =>
  expect(Math.abs(x - expected)).toBeLessThan(tolerance);

describe("signature of each planted fault", () => {
  it("manifold-leak: the meter misses most at idle and nothing at full load; trims follow the meter, not the pressure", () => {
    const s = shift({ cause: "manifold-leak", size: 3 });
    expect(s.idle.meter).toBeLessThan(-0.1);
    expect(s.cruise.meter).toBeLessThan(-NOTHING);
    expect(s.cruise.meter).toBeGreaterThan(s.idle.meter / 3);
    near(s.full.meter, 0);
    near(s.idle.pressure, 0, 0.02);
    near(s.idle.fuel, 0);
    near(s.idle.trim, -s.idle.meter);
    const underPressure = shift({ cause: "manifold-leak", size: 3 }, "pressure");
    near(underPressure.idle.trim, 0);
    near(underPressure.cruise.trim, 0);
  });

  it("leak-before-throttle: the meter misses nearly the same share everywhere", () => {
    const s = shift({ cause: "leak-before-throttle", size: 150 });
    expect(s.idle.meter).toBeLessThan(-0.04);
    near(s.full.meter, s.idle.meter, 0.005);
    near(s.cruise.trim, -s.cruise.meter);
    near(s.cruise.pressure, 0);
    near(shift({ cause: "leak-before-throttle", size: 150 }, "pressure").cruise.trim, 0);
  });

  it("meter-scaled: ln k on the meter everywhere and against it on the trims; nothing under the pressure strategy", () => {
    const s = shift({ cause: "meter-scaled", size: 0.85 });
    for (const part of ["idle", "cruise", "full"] as const) near(s[part].meter, Math.log(0.85));
    near(s.cruise.trim, -Math.log(0.85));
    near(s.cruise.fuel, 0);
    near(shift({ cause: "meter-scaled", size: 0.85 }, "pressure").cruise.trim, 0);
  });

  it("meter-offset: strongest at low flow; meter-fouled: low at high flow only", () => {
    const offset = shift({ cause: "meter-offset", size: 0.4 });
    near(offset.idle.meter, Math.log(1 + 0.4 / 3.2), 0.02);
    expect(offset.full.meter).toBeGreaterThan(0);
    expect(offset.full.meter).toBeLessThan(offset.idle.meter / 2);
    expect(offset.idle.trim).toBeLessThan(-0.08);
    const fouled = shift({ cause: "meter-fouled", size: -0.15 });
    near(fouled.idle.meter, 0, 0.02);
    expect(fouled.full.meter).toBeLessThan(-0.13);
    expect(fouled.cruise.meter).toBeLessThan(-0.03);
    near(fouled.cruise.trim, -fouled.cruise.meter);
  });

  it("map-biased: ln(1 + b/p) on the pressure; drives the trims of the pressure strategy rich, moves none under the meter", () => {
    const s = shift({ cause: "map-biased", size: 3 });
    near(s.idle.pressure, Math.log(1 + 3 / 36), 0.01);
    near(s.full.pressure, Math.log(1 + 3 / 99), 0.01);
    near(s.idle.meter, 0);
    near(s.idle.trim, 0);
    expect(shift({ cause: "map-biased", size: 3 }, "pressure").idle.trim).toBeLessThan(-0.06);
  });

  it("intake-temperature-biased: -ln of the temperature ratio on the pressure, the same everywhere", () => {
    const s = shift({ cause: "intake-temperature-biased", size: 15 });
    for (const part of ["idle", "cruise", "full"] as const) near(s[part].pressure, -Math.log(1 + 15 / 297), 0.008);
    near(s.cruise.trim, 0);
    expect(shift({ cause: "intake-temperature-biased", size: 15 }, "pressure").cruise.trim).toBeGreaterThan(0.02);
  });

  it("breathing-reduced: the pressure reads high, growing with flow; trims move under the pressure strategy alone", () => {
    const s = shift({ cause: "breathing-reduced", size: -0.2 });
    near(s.idle.pressure, 0);
    expect(s.full.pressure).toBeGreaterThan(0.07);
    expect(s.full.pressure).toBeGreaterThan(2 * s.cruise.pressure);
    near(s.full.meter, 0);
    near(s.cruise.trim, 0);
    // rich: less air than the pressure says
    expect(shift({ cause: "breathing-reduced", size: -0.6 }, "pressure").cruise.trim).toBeLessThan(-0.01);
  });

  it("egr-stuck-open: the pressure reads high, most at idle, gone at full load; the meter stays true", () => {
    const s = shift({ cause: "egr-stuck-open", size: 4 });
    expect(s.idle.pressure).toBeGreaterThan(0.1);
    expect(s.cruise.pressure).toBeLessThan(s.idle.pressure);
    expect(s.full.pressure).toBeLessThan(0.02);
    near(s.idle.meter, 0);
    near(s.idle.trim, 0);
    expect(shift({ cause: "egr-stuck-open", size: 4 }, "pressure").idle.trim).toBeLessThan(-0.08);
  });

  it("fuel-delivery-scaled: -ln s on the fuel side everywhere, full load included, under both strategies", () => {
    for (const strategy of ["meter", "pressure"] as const) {
      const s = shift({ cause: "fuel-delivery-scaled", size: 0.88 }, strategy);
      near(s.cruise.trim, -Math.log(0.88));
      for (const part of ["idle", "cruise", "full"] as const) near(s[part].fuel, -Math.log(0.88), 0.015);
      near(s.cruise.meter, 0);
    }
  });

  it("fuel-unmetered: rich, most at idle", () => {
    const s = shift({ cause: "fuel-unmetered", size: 0.03 });
    near(s.idle.fuel, Math.log(1 - 0.03 / (3.25 / 14.6)), 0.02);
    expect(s.idle.fuel).toBeLessThan(-0.1);
    expect(s.full.fuel).toBeGreaterThan(-0.02);
    expect(s.full.fuel).toBeLessThan(0);
  });

  it("injector-offset: lean where doses are small", () => {
    const s = shift({ cause: "injector-offset", size: 0.3 });
    expect(s.idle.fuel).toBeGreaterThan(0.08);
    expect(s.idle.fuel).toBeGreaterThan(1.5 * s.cruise.fuel);
    expect(s.full.fuel).toBeGreaterThan(0);
    near(s.idle.trim, s.idle.fuel);
  });

  it("lambda-biased: the loop holds the reading, so the trims move the other way", () => {
    const s = shift({ cause: "lambda-biased", size: 0.05 });
    near(s.cruise.trim, Math.log(1.05));
    near(s.cruise.fuel, Math.log(1.05));
    near(s.cruise.meter, 0);
  });
});
