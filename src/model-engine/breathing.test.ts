import { describe, expect, it } from "vitest";
import { residualGasFactor } from "../engine/index.ts";
import { seededRandom } from "../numerics/index.ts";
import { breathingOf, efficiencyAt, efficiencyDrawn } from "./breathing.ts";
import { drawParts, tolerance } from "./engine-parts.ts";
import { PETROL_WITH_METER, PETROL_WITH_PRESSURE } from "./families.ts";
import { rpm } from "./protocol.ts";

const asDrawn = breathingOf(PETROL_WITH_METER, drawParts(seededRandom(1), 0));

describe("breathing of the model engine", () => {
  it("follows the residual-gas law of engine/ at the strength drawn", () => {
    const strength = PETROL_WITH_METER.residualStrength;
    for (const pressure of [25e3, 40e3, 100e3]) {
      const law = residualGasFactor({
        exhaustOverIntakePressure: 101e3 / pressure,
        compressionRatio: PETROL_WITH_METER.compressionRatio,
      });
      const equal = efficiencyDrawn(asDrawn, rpm(2500), pressure, pressure);
      expect(efficiencyDrawn(asDrawn, rpm(2500), pressure, 101e3) / equal).toBeCloseTo(1 + strength * (law - 1), 9);
    }
  });

  it("passes through the points drawn", () => {
    expect(efficiencyAt(asDrawn, rpm(2500), 50e3)).toBeCloseTo(0.88, 2);
    expect(efficiencyAt(asDrawn, rpm(4500), 99e3)).toBeCloseTo(0.96, 2);
  });

  it("lies at full load inside the published range for naturally aspirated engines, 0.75 to 1.05", () => {
    for (const design of [PETROL_WITH_METER, PETROL_WITH_PRESSURE]) {
      for (const [, efficiency] of design.breathing) {
        expect(efficiency).toBeGreaterThanOrEqual(0.75);
        expect(efficiency).toBeLessThanOrEqual(1.05);
      }
    }
  });

  it("differs from engine to engine as the healthy tolerances say", () => {
    const ratios = Array.from({ length: 300 }, (_, seed) => {
      const engine = breathingOf(PETROL_WITH_METER, drawParts(seededRandom(seed)));
      return Math.log(efficiencyAt(engine, rpm(2000), 60e3) / efficiencyAt(asDrawn, rpm(2000), 60e3));
    });
    const sd = Math.sqrt(ratios.reduce((s, r) => s + r * r, 0) / ratios.length);
    // A normal cut at two sd has 0.774 of the variance; the shape has all of its own. Tolerance: four standard errors.
    const expected = Math.sqrt(0.774 * tolerance("breathingScale") ** 2 + tolerance("breathingShape") ** 2);
    expect(Math.abs(sd / expected - 1)).toBeLessThan(4 / Math.sqrt(2 * ratios.length));
  });
});
