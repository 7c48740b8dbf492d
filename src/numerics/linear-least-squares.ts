/**
 * Linear least squares by Householder reflections, which keeps twice the digits of the normal equations.
 *
 * Equation    min |A x - b|^2,  A = Q R,  x = R^-1 Q'b,  cov(x) = s^2 (R'R)^-1,  s^2 = |A x - b|^2/(m - n)          (1)
 * Validity    m >= n rows, columns independent to working precision: `rank-deficient` otherwise, a value and not an exception
 * Numerics    columns are scaled to unit length first
 * Source      [golub2013] algorithms 5.2.1, 5.3.2                            Check  published/strd.test.ts
 */
export type LinearFit = {
  readonly status: "solved";
  readonly parameters: Float64Array;
  /** n x n, row-major, of unit variance: times `residualVariance` where the weights are relative */
  readonly unitCovariance: Float64Array;
  readonly residuals: Float64Array;
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
  /** NaN without degrees of freedom */
  readonly residualVariance: number;
};

export type LinearFitOutcome = LinearFit | { readonly status: "rank-deficient"; readonly column: number };

/**
 * `design` is m x n, row-major. Rows and `values` already divided by their standard deviations where those differ. A column
 * of which less than `rankTolerance` of its length stands outside the span of those before it counts as dependent.
 */
export function linearLeastSquares(
  design: Float64Array,
  values: Float64Array,
  columns: number,
  rankTolerance = 1e-14,
): LinearFitOutcome {
  const n = columns;
  const m = values.length;
  if (design.length !== m * n || m < n) throw new Error(`Assertion failed: ${m} rows for ${n} columns`);
  const scale = columnNorms(design, m, n);
  const a = design.slice();
  for (let j = 0; j < n; j++) {
    if (scale[j] === 0) return { status: "rank-deficient", column: j };
    for (let i = 0; i < m; i++) a[i * n + j] = a[i * n + j]! / scale[j]!;
  }
  const b = values.slice();
  const deficient = reduce(a, b, { m, n, rankTolerance });
  if (deficient !== null) return { status: "rank-deficient", column: deficient };
  const parameters = b.slice(0, n);
  backSubstitute(a, n, parameters);
  const inverse = invertUpper(a, n);
  const unitCovariance = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    parameters[i] = parameters[i]! / scale[i]!;
    for (let j = 0; j < n; j++) {
      let sum = 0;
      for (let k = Math.max(i, j); k < n; k++) sum += inverse[i * n + k]! * inverse[j * n + k]!;
      unitCovariance[i * n + j] = sum / (scale[i]! * scale[j]!);
    }
  }
  const residuals = new Float64Array(m);
  let sum = 0;
  for (let i = 0; i < m; i++) {
    let r = values[i]!;
    for (let j = 0; j < n; j++) r -= design[i * n + j]! * parameters[j]!;
    residuals[i] = r;
    sum += r * r;
  }
  return {
    status: "solved",
    parameters,
    unitCovariance,
    residuals,
    residualSumOfSquares: sum,
    degreesOfFreedom: m - n,
    residualVariance: m > n ? sum / (m - n) : Number.NaN,
  };
}

/** Turns A into R (upper triangle) and b into Q'b, in place; the index of a dependent column, or null. */
function reduce(
  a: Float64Array,
  b: Float64Array,
  at: { readonly m: number; readonly n: number; readonly rankTolerance: number },
): number | null {
  const { m, n } = at;
  for (let k = 0; k < n; k++) {
    let norm = 0;
    for (let i = k; i < m; i++) norm = Math.hypot(norm, a[i * n + k]!);
    if (norm <= at.rankTolerance) return k;
    const pivot = a[k * n + k]! > 0 ? -norm : norm;
    const head = a[k * n + k]! - pivot;
    a[k * n + k] = head;
    const beta = -1 / (pivot * head);
    for (let j = k + 1; j < n; j++) reflectColumn(a, { m, n, k, j, beta });
    let sum = 0;
    for (let i = k; i < m; i++) sum += a[i * n + k]! * b[i]!;
    for (let i = k; i < m; i++) b[i] = b[i]! - beta * sum * a[i * n + k]!;
    a[k * n + k] = pivot;
  }
  return null;
}

function reflectColumn(
  a: Float64Array,
  at: { readonly m: number; readonly n: number; readonly k: number; readonly j: number; readonly beta: number },
): void {
  const { m, n, k, j, beta } = at;
  let sum = 0;
  for (let i = k; i < m; i++) sum += a[i * n + k]! * a[i * n + j]!;
  for (let i = k; i < m; i++) a[i * n + j] = a[i * n + j]! - beta * sum * a[i * n + k]!;
}

function backSubstitute(r: Float64Array, n: number, x: Float64Array): void {
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let j = i + 1; j < n; j++) sum -= r[i * n + j]! * x[j]!;
    x[i] = sum / r[i * n + i]!;
  }
}

function invertUpper(r: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  const column = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    column.fill(0);
    column[j] = 1;
    backSubstitute(r, n, column);
    for (let i = 0; i <= j; i++) inverse[i * n + j] = column[i]!;
  }
  return inverse;
}

function columnNorms(design: Float64Array, m: number, n: number): Float64Array {
  const norms = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    let norm = 0;
    for (let i = 0; i < m; i++) norm = Math.hypot(norm, design[i * n + j]!);
    norms[j] = norm;
  }
  return norms;
}
