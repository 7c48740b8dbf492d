import fc from "fast-check";
import { expect, it } from "vitest";
import { pivotedCholesky } from "./pivoted-cholesky.ts";
import { seededRandom } from "./seeded-random.ts";

/** n vectors of length m from a seed, as rows; `rank` of them independent. */
function vectors(seed: number, n: number, m: number, rank: number): number[][] {
  const random = seededRandom(seed);
  const some = Array.from({ length: rank }, () => Array.from({ length: m }, () => random.normal()));
  return Array.from({ length: n }, (_, i) => {
    if (i < rank) return some[i]!;
    const shares = some.map(() => random.normal());
    return some[0]!.map((_, c) => shares.reduce((sum, share, r) => sum + share * some[r]![c]!, 0));
  });
}

const product = (a: readonly number[], b: readonly number[]) => a.reduce((sum, v, i) => sum + v * b[i]!, 0);

function coordinatesOf(rows: number[][], tolerance: number, first = 0) {
  return pivotedCholesky(
    Float64Array.from(rows, (r) => product(r, r)),
    (i) => Float64Array.from(rows, (r) => product(r, rows[i]!)),
    tolerance,
    first,
  );
}

it("gives coordinates whose products are the inner products, in as many dimensions as the vectors span", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 1, max: 6 }), (seed, rank) => {
      const rows = vectors(seed, 15, 9, rank);
      const { dimensions, values } = coordinatesOf(rows, 1e-9);
      expect(dimensions).toBe(rank);
      for (let i = 0; i < rows.length; i++) {
        for (let j = 0; j < rows.length; j++) {
          const a = [...values.subarray(i * dimensions, (i + 1) * dimensions)];
          const b = [...values.subarray(j * dimensions, (j + 1) * dimensions)];
          expect(product(a, b)).toBeCloseTo(product(rows[i]!, rows[j]!), 5);
        }
      }
    }),
    { numRuns: 30 },
  );
});

it("leaves out no more of any vector than it was told to", () => {
  const rows = vectors(7, 20, 12, 12);
  const { dimensions, values } = coordinatesOf(rows, 0.5);
  expect(dimensions).toBeLessThan(12);
  rows.forEach((row, i) => {
    const own = [...values.subarray(i * dimensions, (i + 1) * dimensions)];
    const left = product(row, row) - product(own, own);
    expect(left).toBeGreaterThanOrEqual(-1e-9);
    expect(left).toBeLessThanOrEqual(0.5);
  });
});

it("takes the vector named as its first axis, one of no length included", () => {
  const rows = vectors(3, 6, 5, 3);
  const { dimensions, values } = coordinatesOf(rows, 1e-9, 4);
  const own = values.subarray(4 * dimensions, 5 * dimensions);
  expect(own[0]).toBeCloseTo(Math.sqrt(product(rows[4]!, rows[4]!)), 9);
  expect([...own.subarray(1)].every((v) => Math.abs(v) < 1e-9)).toBe(true);
  const zero = [[0, 0], ...vectors(3, 3, 2, 2)];
  const flat = coordinatesOf(zero, 1e-9, 0);
  expect([...flat.values.subarray(0, flat.dimensions)].every((v) => v === 0)).toBe(true);
});
