/**
 * Dense symmetric positive-definite algebra on row-major Float64Array, for the few dozen unknowns of the tally.
 *
 * Equation    A = L L',  x = L'^-1 L^-1 b,  ln|A| = 2 sum ln L_ii
 * Validity    A symmetric positive definite; `cholesky` answers false where it is not to working precision
 * Source      [golub2013] algorithm 4.2.2   Check  published/linear-algebra.test.ts (against ml-matrix)
 */

/** Replaces the lower triangle of A (n x n, row-major) by its Cholesky factor; the upper triangle is left as it was. */
export function cholesky(a: Float64Array, n: number): boolean {
  for (let i = 0; i < n; i++) {
    const rowI = i * n;
    for (let j = 0; j <= i; j++) {
      const rowJ = j * n;
      let sum = a[rowI + j]!;
      for (let k = 0; k < j; k++) sum -= a[rowI + k]! * a[rowJ + k]!;
      if (i === j) {
        if (!(sum > 0)) return false;
        a[rowI + i] = Math.sqrt(sum);
      } else {
        a[rowI + j] = sum / a[rowJ + j]!;
      }
    }
  }
  return true;
}

/** x <- L^-1 x */
export function solveLower(l: Float64Array, n: number, x: Float64Array): void {
  for (let i = 0; i < n; i++) {
    const row = i * n;
    let sum = x[i]!;
    for (let k = 0; k < i; k++) sum -= l[row + k]! * x[k]!;
    x[i] = sum / l[row + i]!;
  }
}

/** x <- L'^-1 x */
export function solveUpper(l: Float64Array, n: number, x: Float64Array): void {
  for (let i = n - 1; i >= 0; i--) {
    const value = x[i]! / l[i * n + i]!;
    x[i] = value;
    for (let k = 0; k < i; k++) x[k] = x[k]! - l[i * n + k]! * value;
  }
}

/** x <- A^-1 x, given the Cholesky factor of A */
export function choleskySolve(l: Float64Array, n: number, x: Float64Array): void {
  solveLower(l, n, x);
  solveUpper(l, n, x);
}

/** ln|A|, given the Cholesky factor of A */
export function logDeterminant(l: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += Math.log(l[i * n + i]!);
  return 2 * sum;
}

/** A^-1 (full, row-major), given the Cholesky factor of A */
export function choleskyInverse(l: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  const column = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    column.fill(0);
    column[j] = 1;
    choleskySolve(l, n, column);
    for (let i = 0; i < n; i++) inverse[i * n + j] = column[i]!;
  }
  return inverse;
}

export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
