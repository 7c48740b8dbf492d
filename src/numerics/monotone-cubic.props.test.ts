import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  evaluateInInterval,
  evaluateMonotoneCubic,
  evaluateMonotoneCubicAt,
  intervalOf,
  monotoneCubic,
  slopeOfMonotoneCubic,
} from "./monotone-cubic.ts";

const step = fc.double({ min: 0.01, max: 10, noNaN: true });
const rise = fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 100, noNaN: true }));
const curve = fc.array(fc.tuple(step, rise), { minLength: 1, maxLength: 12 }).map((steps) => {
  const x = [0];
  const y = [0];
  for (const [dx, dy] of steps) {
    x.push(x[x.length - 1]! + dx);
    y.push(y[y.length - 1]! + dy);
  }
  return monotoneCubic(x, y);
});
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("monotoneCubic", () => {
  it("passes through its points", () => {
    fc.assert(
      fc.property(curve, (c) => {
        for (let i = 0; i < c.x.length; i++) expect(evaluateMonotoneCubic(c, c.x[i]!)).toBeCloseTo(c.y[i]!, 9);
      }),
    );
  });

  it("never falls where the points do not fall, not even between them", () => {
    fc.assert(
      fc.property(curve, share, share, (c, a, b) => {
        const end = c.x[c.x.length - 1]!;
        const [low, high] = a < b ? [a * end, b * end] : [b * end, a * end];
        const scale = c.y[c.y.length - 1]!;
        expect(evaluateMonotoneCubic(c, high) - evaluateMonotoneCubic(c, low)).toBeGreaterThanOrEqual(-1e-12 * scale);
      }),
    );
  });

  it("has the slope that a finite difference shows", () => {
    fc.assert(
      fc.property(curve, share, (c, s) => {
        const end = c.x[c.x.length - 1]!;
        const at = s * end;
        const h = 1e-6 * end;
        const i = intervalOf(c.x, at);
        if (at - h < c.x[i]! || at + h > c.x[i + 1]!) return;
        const difference = (evaluateMonotoneCubic(c, at + h) - evaluateMonotoneCubic(c, at - h)) / (2 * h);
        const largest = Math.max(...c.slope, ...Array.from(c.y, (y) => y / end)) * 10;
        expect(Math.abs(slopeOfMonotoneCubic(c, at) - difference)).toBeLessThan(1e-4 * largest + 1e-9);
      }),
    );
  });

  it("gives the same for many values at once as one by one, beyond the ends and for NaN too", () => {
    fc.assert(
      fc.property(
        curve,
        fc.array(fc.double({ min: -1, max: 2, noNaN: true }), { minLength: 1, maxLength: 40 }),
        (c, shares) => {
          const end = c.x[c.x.length - 1]!;
          const x = Float64Array.from([...shares.map((s) => s * end), ...c.x, Number.NaN]);
          const out = new Float64Array(x.length);
          evaluateMonotoneCubicAt(c, x, out);
          for (let k = 0; k < x.length - 1; k++) {
            expect(out[k]).toBe(evaluateInInterval(c, intervalOf(c.x, x[k]!), x[k]!));
          }
          expect(out[x.length - 1]).toBeNaN();
        },
      ),
    );
  });

  it("refuses abscissae that do not ascend, and a single point", () => {
    expect(() => monotoneCubic([0, 1, 1], [0, 1, 2])).toThrow(/ascend/);
    expect(() => monotoneCubic([0], [0])).toThrow(/Assertion/);
  });

  it("follows the end tangent beyond the points", () => {
    const c = monotoneCubic([0, 1, 3], [0, 2, 3]);
    expect(evaluateMonotoneCubic(c, -1)).toBeCloseTo(-c.slope[0]!, 12);
    expect(evaluateMonotoneCubic(c, 4)).toBeCloseTo(3 + c.slope[2]!, 12);
  });
});
