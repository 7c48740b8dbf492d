import { describe, expect, it } from "vitest";
import { crankGeometry, cylinderVolume, VALVE_TIMING, valveShare, wallArea } from "./crank-geometry.ts";
import { PETROL_WITH_METER } from "./families.ts";

const g = crankGeometry(PETROL_WITH_METER);

describe("crank geometry", () => {
  it("goes from the clearance to clearance and swept volume, in the stated compression ratio", () => {
    expect(cylinderVolume(g, 0)).toBeCloseTo(g.clearance, 12);
    expect(cylinderVolume(g, 180) / g.clearance).toBeCloseTo(PETROL_WITH_METER.compressionRatio, 9);
    expect(cylinderVolume(g, 540)).toBeCloseTo(cylinderVolume(g, 180), 12);
    expect(4 * g.swept).toBeCloseTo(PETROL_WITH_METER.displacement, 12);
  });

  it("is below the middle at a quarter turn, as a rod of finite length leaves it", () => {
    const share = (cylinderVolume(g, 90) - g.clearance) / g.swept;
    // 1/2 (l + 1 - sqrt(l^2 - 1)) with l = 3.5, by hand
    expect(share).toBeCloseTo(0.5 * (4.5 - Math.sqrt(11.25)), 9);
  });

  it("has head, piston and liner as walls", () => {
    expect(wallArea(g, g.clearance)).toBeCloseTo((Math.PI * g.bore ** 2) / 2, 12);
    expect(wallArea(g, g.clearance + g.swept) - wallArea(g, g.clearance)).toBeCloseTo(Math.PI * g.bore ** 2, 9);
  });

  it("opens valves at their events, full in between, through the end of the cycle too", () => {
    const { exhaustOpens, exhaustCloses } = VALVE_TIMING;
    expect(valveShare(exhaustOpens, exhaustOpens, exhaustCloses)).toBe(0);
    expect(valveShare((exhaustOpens + exhaustCloses) / 2, exhaustOpens, exhaustCloses)).toBeCloseTo(1, 12);
    expect(valveShare(exhaustCloses + 1, exhaustOpens, exhaustCloses)).toBe(0);
    expect(valveShare(5, 700, 740)).toBeGreaterThan(0);
  });
});
