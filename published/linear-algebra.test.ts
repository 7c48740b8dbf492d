/** Cholesky factor, solution, inverse and determinant against another library and against exact arithmetic. */
import { CholeskyDecomposition, determinant, inverse, Matrix } from "ml-matrix";
import { describe, it } from "vitest";
import { cholesky, choleskyInverse, choleskySolve, logDeterminant } from "../src/numerics/index.ts";
import { expectDigits } from "./matched-digits.ts";

/** 1/(i + j + 1) plus 0.5 on the diagonal: symmetric, positive definite, not too well conditioned. */
function matrixOf(n: number): Float64Array {
  return Float64Array.from({ length: n * n }, (_, k) => {
    const i = Math.floor(k / n);
    const j = k % n;
    return 1 / (i + j + 1) + (i === j ? 0.5 : 0);
  });
}

describe("golub2013", () => {
  for (const n of [2, 5, 12]) {
    it(`agrees with another library at ${n} unknowns`, () => {
      const a = matrixOf(n);
      const rows = Array.from({ length: n }, (_, i) => Array.from(a.subarray(i * n, (i + 1) * n)));
      const theirs = new CholeskyDecomposition(new Matrix(rows));
      const factor = a.slice();
      cholesky(factor, n);
      const right = Array.from({ length: n }, (_, i) => 1 + i);
      const solution = Float64Array.from(right);
      choleskySolve(factor, n, solution);
      const expectedSolution = theirs.solve(Matrix.columnVector(right));
      const expectedInverse = inverse(new Matrix(rows));
      const ours = choleskyInverse(factor, n);
      for (let i = 0; i < n; i++) {
        expectDigits(solution[i] ?? Number.NaN, expectedSolution.get(i, 0), 11);
        for (let j = 0; j <= i; j++) {
          expectDigits(factor[i * n + j] ?? Number.NaN, theirs.lowerTriangularMatrix.get(i, j), 12);
          expectDigits(ours[i * n + j] ?? Number.NaN, expectedInverse.get(i, j), 10);
        }
      }
      expectDigits(logDeterminant(factor, n), Math.log(determinant(new Matrix(rows))), 11, "determinant", 1);
    });
  }

  it("solves a hand-checkable system: 4x + 2y = 8, 2x + 3y = 8", () => {
    const a = Float64Array.from([4, 2, 2, 3]);
    cholesky(a, 2);
    const x = Float64Array.from([8, 8]);
    choleskySolve(a, 2, x);
    expectDigits(x[0] ?? Number.NaN, 1, 15);
    expectDigits(x[1] ?? Number.NaN, 2, 15);
    expectDigits(logDeterminant(a, 2), Math.log(8), 14);
  });
});
