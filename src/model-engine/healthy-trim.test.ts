import { describe, expect, it } from "vitest";
import { seededRandom } from "../numerics/index.ts";
import { drawParts } from "./engine-parts.ts";
import { BOOSTED_BOTH, buildEngine, PETROL_WITH_METER, PETROL_WITH_PRESSURE } from "./families.ts";
import { LARGEST_HEALTHY_TRIM, largestTrim } from "./healthy-trim.ts";

describe("engines called healthy", () => {
  it("have tolerances that add up to no more than the healthy trim, and few draws are discarded for it", () => {
    for (const design of [PETROL_WITH_METER, PETROL_WITH_PRESSURE, BOOSTED_BOTH]) {
      let asDrawnFirst = 0;
      for (let seed = 0; seed < 200; seed++) {
        const { parts } = buildEngine(design, seed);
        expect(largestTrim(design, parts)).toBeLessThanOrEqual(LARGEST_HEALTHY_TRIM);
        const first = drawParts(seededRandom(seed).fork("parts 0"));
        if (first.injectorScale === parts.injectorScale) asDrawnFirst++;
      }
      expect(asDrawnFirst).toBeGreaterThan(140);
    }
  });

  it("have as drawn the trim of the air's moisture alone", () => {
    const asDrawn = drawParts(seededRandom(1), 0);
    expect(largestTrim(PETROL_WITH_METER, asDrawn)).toBeCloseTo(0.0063, 12);
    expect(largestTrim(PETROL_WITH_PRESSURE, asDrawn)).toBeCloseTo(0.0063 * 2.608, 4);
  });
});
