import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ThrottlePlate, throttleAngle, throttleArea } from "./throttle-area.ts";
import { effectiveAreaOf, throttleMassFlow } from "./throttle-flow.ts";

const PLATE: ThrottlePlate = { bore: 0.06, shaft: 0.01, closedAngle: 0.1 };
const FULL = (Math.PI * 0.06 ** 2) / 4;
const STATE = { upstreamPressure: 100_000, upstreamTemperature: 293.15, downstreamPressure: 40_000 };
const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });

describe("throttle area", () => {
  it("refuses a shaft that fills the bore and angles no plate has", () => {
    expect(() => throttleArea({ ...PLATE, shaft: 0.055 }, 0.5)).toThrow(/shaft/);
    expect(() => throttleArea({ ...PLATE, closedAngle: 1.3 }, 0.5)).toThrow(/closed angle/);
    expect(() => throttleArea(PLATE, 1.6)).toThrow(/plate angle/);
  });

  it("is closed at its closed angle and opens to the bore less the shaft's strip", () => {
    expect(throttleArea(PLATE, 0.1)).toBe(0);
    expect(throttleArea(PLATE, 0.05)).toBe(0);
    const a = 0.01 / 0.06;
    const strip = (2 / Math.PI) * (a * Math.sqrt(1 - a * a) + Math.asin(a));
    expect(throttleArea(PLATE, Math.PI / 2) / FULL).toBeCloseTo(1 - strip, 12);
    expect(throttleArea({ ...PLATE, shaft: 0, closedAngle: 0 }, Math.PI / 2)).toBeCloseTo(FULL, 12);
  });

  it("without a shaft is 1 - cos/cos0", () => {
    const plate = { ...PLATE, shaft: 0 };
    expect(throttleArea(plate, 0.7) / FULL).toBeCloseTo(1 - Math.cos(0.7) / Math.cos(0.1), 12);
  });

  it("opens with the angle, without steps, and gives the angle back", () => {
    fc.assert(
      fc.property(share, (s) => {
        const angle = 0.1 + s * 1.25;
        const area = throttleArea(PLATE, angle);
        expect(throttleArea(PLATE, angle + 1e-5)).toBeGreaterThanOrEqual(area);
        expect(throttleArea(PLATE, angle + 1e-9) - area).toBeLessThan(1e-10);
        if (angle < 1.39) expect(throttleAngle(PLATE, area)!).toBeCloseTo(angle, 6);
      }),
    );
    expect(throttleAngle(PLATE, 0)).toBe(0.1);
    expect(throttleAngle(PLATE, FULL)).toBeNull();
  });
});

describe("throttle flow", () => {
  const throttle = { ...PLATE, dischargeCoefficient: 0.8, bypassArea: 4e-6 };

  it("passes the bypass when closed, and tells the area that a flow needs", () => {
    const closed = throttleMassFlow(throttle, 0.1, STATE).massFlow;
    expect(effectiveAreaOf(closed, STATE)).toBeCloseTo(4e-6, 14);
    fc.assert(
      fc.property(share, (s) => {
        const angle = 0.1 + s;
        const { massFlow } = throttleMassFlow(throttle, angle, STATE);
        expect(effectiveAreaOf(massFlow, STATE)).toBeCloseTo(0.8 * throttleArea(PLATE, angle) + 4e-6, 12);
      }),
    );
  });

  it("says that a wide-open throttle is no witness", () => {
    expect(throttleMassFlow(throttle, 0.5, STATE).usable).toBe(true);
    expect(throttleMassFlow(throttle, 0.5, { ...STATE, downstreamPressure: 98_000 }).usable).toBe(false);
  });
});
