/** The rest of the catalogue: meter curve and pulsation, filter, throttle, hose, barometer, valve gear, firing, fuel supply, exhaust. */
import { describe, expect, it } from "vitest";
import { BOOSTED_BOTH, DIESEL_WITH_EGR } from "./families.ts";
import type { Fault } from "./fault.ts";
import { AS_METER, AS_PRESSURE, shiftOf } from "./signature-rig.ts";

const shift = (fault: Fault, strategy: "meter" | "pressure" = "meter") =>
  shiftOf(fault, strategy === "meter" ? AS_METER : AS_PRESSURE);

/** Close enough to nothing: limit cycle of the narrow probe, purge, idle speed a little off. */
const NOTHING = 0.012;
const near = (x: number, expected: number, tolerance = NOTHING) =>
  expect(Math.abs(x - expected)).toBeLessThan(tolerance);

describe("signature of each planted fault", () => {
  it("meter-curve-wrong: the meter errs by the curve, trims against it; nothing under the pressure strategy", () => {
    const fault: Fault = { cause: "meter-curve-wrong", size: -0.1, errorAt30: 0.12 };
    const s = shift(fault);
    expect(s.idle.meter).toBeGreaterThan(0.1);
    expect(s.full.meter).toBeLessThan(-0.08);
    near(s.idle.trim, -s.idle.meter, 0.02);
    near(s.cruise.pressure, 0);
    near(shift(fault, "pressure").cruise.trim, 0);
  });

  it("meter-pulsation: errs wide open at low speed only", () => {
    const s = shift({ cause: "meter-pulsation", size: -0.15 });
    near(s.low.meter, Math.log(0.85), 0.03);
    near(s.idle.meter, 0);
    near(s.full.meter, 0);
  });

  it("intake-restricted: full load loses pressure with the square of flow; no witness and no trim moves", () => {
    for (const strategy of ["meter", "pressure"] as const) {
      const s = shift({ cause: "intake-restricted", size: 8 }, strategy);
      near(s.idle.meter, 0);
      near(s.cruise.trim, 0);
      near(s.cruise.pressure, 0);
      near(s.full.meter, 0);
      near(s.full.fuel, 0);
      expect(s.full.duct).toBeLessThan(-0.035); // 8 kPa at the largest flow, at 4,500 rev/min some less
      expect(s.full.duct).toBeGreaterThan(-0.085);
      expect(s.low.duct / s.full.duct).toBeLessThan(0.25); // a third of the flow: a ninth, and lost air counts again
      expect(s.low.duct).toBeLessThan(0);
    }
  });

  it("throttle-area-changed: the idle governor moves the plate against it; no trim moves", () => {
    for (const strategy of ["meter", "pressure"] as const) {
      const gummed = shift({ cause: "throttle-area-changed", size: -6 }, strategy);
      expect(gummed.idle.throttle).toBeGreaterThan(0.005);
      near(gummed.idle.trim, 0);
      near(gummed.idle.meter, 0);
      near(gummed.full.throttle, 0, 0.001);
    }
  });

  it("map-scaled: about ambient it errs at idle and not at full load; about zero everywhere alike", () => {
    const hose = shift({ cause: "map-scaled", size: -0.1 });
    expect(hose.idle.pressure).toBeGreaterThan(0.12);
    near(hose.full.pressure, 0);
    near(hose.idle.trim, 0);
    const part = shift({ cause: "map-scaled", size: 0.08, pivot: "zero" });
    for (const at of ["idle", "cruise", "full"] as const) near(part[at].pressure, Math.log(1.08), 0.005);
    expect(shift({ cause: "map-scaled", size: 0.08, pivot: "zero" }, "pressure").cruise.trim).toBeLessThan(-0.06);
    expect(shift({ cause: "map-scaled", size: -0.1 }, "pressure").idle.trim).toBeLessThan(-0.1);
  });

  it("baro-biased: moves no witness of a heated meter or of the pressure; the pressure strategy's residual gas a little", () => {
    const s = shift({ cause: "baro-biased", size: 4 });
    for (const part of ["idle", "cruise", "full"] as const) {
      near(s[part].meter, 0);
      near(s[part].pressure, 0);
    }
    const trim = shift({ cause: "baro-biased", size: 4 }, "pressure").idle.trim;
    expect(trim).toBeGreaterThan(0);
    expect(trim).toBeLessThan(0.03);
  });

  it("egr-low-flow: the pressure reads lower for the same air; a diesel that holds its meter opens the valve instead", () => {
    const clogged = shiftOf({ cause: "egr-low-flow", size: 0.1 }, DIESEL_WITH_EGR);
    expect(clogged.idle.pressure).toBeLessThan(-0.04);
    near(clogged.idle.meter, 0, 0.02);
    near(clogged.full.pressure, 0, 0.02);
  });

  it("valve-timing-shifted: late, the pressure reads high at idle and low speed and low at high speed", () => {
    const s = shift({ cause: "valve-timing-shifted", size: 12 });
    expect(s.idle.pressure).toBeGreaterThan(0.03);
    expect(s.low.pressure).toBeGreaterThan(0.03);
    expect(s.full.pressure).toBeLessThan(-0.005);
    near(s.cruise.trim, 0);
    expect(shift({ cause: "valve-timing-shifted", size: 12 }, "pressure").idle.trim).toBeLessThan(-0.02);
  });

  it("misfire: unburnt oxygen reads lean, so the trims make the mixture rich, under both strategies", () => {
    for (const strategy of ["meter", "pressure"] as const) {
      const s = shift({ cause: "misfire", size: 0.06 }, strategy);
      near(s.cruise.fuel, -Math.log(0.94));
      near(s.cruise.trim, -Math.log(0.94));
      near(s.cruise.lambda, Math.log(0.94));
      near(s.cruise.meter, 0);
    }
  });

  it("fuel-supply-limited: lean beyond a flow, nothing below it", () => {
    for (const strategy of ["meter", "pressure"] as const) {
      const s = shift({ cause: "fuel-supply-limited", size: 2.5, loss: 0.3 }, strategy);
      near(s.idle.fuel, 0);
      near(s.cruise.trim, 0);
      expect(s.full.fuel).toBeGreaterThan(0.1);
      expect(s.full.lambda).toBeGreaterThan(0.1);
    }
  });

  it("fuel-pressure-reference: rich at idle by the root of the pressure, right at full load", () => {
    for (const strategy of ["meter", "pressure"] as const) {
      const s = shift({ cause: "fuel-pressure-reference", size: 70 }, strategy);
      near(s.idle.fuel, -0.5 * Math.log(1 + 66 / 300), 0.02);
      near(s.idle.trim, s.idle.fuel);
      near(s.full.fuel, 0);
    }
  });

  it("fuel-composition: ln(assumed/true ratio) on the fuel side everywhere", () => {
    for (const strategy of ["meter", "pressure"] as const) {
      const s = shift({ cause: "fuel-composition", size: 0.93 }, strategy);
      for (const part of ["idle", "cruise", "full"] as const) near(s[part].fuel, -Math.log(0.93), 0.015);
      near(s.cruise.trim, -Math.log(0.93));
      near(s.cruise.meter, 0);
    }
  });

  it("exhaust-air-added: imitates a leak in the trims, strong at idle and fading, while meter and pressure agree", () => {
    for (const strategy of ["meter", "pressure"] as const) {
      const s = shift({ cause: "exhaust-air-added", size: 0.4 }, strategy);
      expect(s.idle.fuel).toBeGreaterThan(0.09);
      near(s.idle.trim, s.idle.fuel);
      near(s.cruise.fuel, 0);
      near(s.idle.meter, 0);
      near(s.idle.pressure, 0);
    }
  });

  it("boost-leak: the meter counts air that blows out under boost; at idle next to nothing", () => {
    const s = shiftOf({ cause: "boost-leak", size: 25 }, BOOSTED_BOTH);
    expect(s.full.meter).toBeGreaterThan(0.04);
    near(s.idle.meter, 0, 0.02);
    near(s.cruise.fuel, 0, 0.02);
  });

  it("adds pairs: a leak and a weak injector together move trims by the sum of both", () => {
    const pair: Fault[] = [
      { cause: "manifold-leak", size: 2 },
      { cause: "fuel-delivery-scaled", size: 0.95 },
    ];
    const alone = pair.map((fault) => shift(fault).idle.trim);
    near(shiftOf(pair).idle.trim, alone[0]! + alone[1]!, 0.015);
  });
});
