import { expect, it } from "vitest";
import { cholesky, choleskyInverse, choleskySolve, logDeterminant } from "./index.ts";

it("solves, inverts and takes the determinant of a small matrix of known answer", () => {
  const a = Float64Array.of(4, 2, 2, 3);
  expect(cholesky(a, 2)).toBe(true);
  const x = Float64Array.of(2, 5);
  choleskySolve(a, 2, x);
  expect([...x]).toEqual([-0.5, 2].map((v) => expect.closeTo(v, 12)));
  expect(logDeterminant(a, 2)).toBeCloseTo(Math.log(8), 12);
  expect([...choleskyInverse(a, 2)]).toEqual([3 / 8, -1 / 4, -1 / 4, 1 / 2].map((v) => expect.closeTo(v, 12)));
});

it("answers false for a matrix that is not positive definite", () => {
  expect(cholesky(Float64Array.of(1, 2, 2, 1), 2)).toBe(false);
});
