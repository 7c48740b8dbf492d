import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  chiSquareCdf,
  chiSquareQuantile,
  chiSquareUpper,
  fisherCdf,
  fisherQuantile,
  fisherUpper,
  studentCdf,
  studentQuantile,
  studentUpper,
} from "./distributions.ts";
import { erf, erfc } from "./error-function.ts";

const degrees = fc.double({ min: 0.5, max: 400, noNaN: true });
const probability = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
const positive = fc.double({ min: 1e-3, max: 500, noNaN: true });

describe("distributions", () => {
  it("have tails that sum to one", () => {
    fc.assert(
      fc.property(positive, degrees, degrees, (x, a, b) => {
        expect(chiSquareCdf(x, a) + chiSquareUpper(x, a)).toBeCloseTo(1, 12);
        expect(studentCdf(x, a) + studentUpper(x, a)).toBeCloseTo(1, 12);
        const d = { numerator: a, denominator: b };
        expect(fisherCdf(x, d) + fisherUpper(x, d)).toBeCloseTo(1, 11);
        expect(erf(x / 100) + erfc(x / 100)).toBeCloseTo(1, 13);
      }),
    );
  });

  it("have quantiles that undo the distribution", () => {
    fc.assert(
      fc.property(probability, degrees, degrees, (p, a, b) => {
        expect(chiSquareCdf(chiSquareQuantile(p, a), a)).toBeCloseTo(p, 10);
        expect(studentCdf(studentQuantile(p, a), a)).toBeCloseTo(p, 10);
        const d = { numerator: a, denominator: b };
        expect(fisherCdf(fisherQuantile(p, d), d)).toBeCloseTo(p, 10);
      }),
      { numRuns: 60 },
    );
  });

  it("are one family: t squared is F, chi-square of one is the normal squared", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 20, noNaN: true }), degrees, (t, n) => {
        const f = fisherUpper(t * t, { numerator: 1, denominator: n });
        expect(2 * studentUpper(t, n)).toBeCloseTo(f, 11);
        expect(chiSquareUpper(t * t, 1)).toBeCloseTo(erfc(t / Math.SQRT2), 12);
      }),
    );
  });
});
