/**
 * Nonlinear least squares by Levenberg and Marquardt, with the covariance of the parameters.
 *
 * Equation    min |r(p)|^2;  step from  min |J d + r|^2 + mu |D d|^2,  D = largest column norms of J so far            (1)
 *             cov(p) = s^2 (J'J)^-1,  s^2 = |r|^2/(m - n)                                                       (2)
 * Symbols     r residuals (model minus data, over their standard deviations) | J = dr/dp | mu damping
 * Validity    m >= n; r defined near the start: where it is not finite the step is shortened
 * Numerics    steps by Householder reflections on (J; sqrt(mu) D), never by J'J; damping after Nielsen's gain rule. Ends when a step
 *             moves no parameter by 1e-12 of itself, or when the predicted fall is below 1e-15 of the sum. Give an analytic Jacobian
 *             where digits matter: central differences keep about ten
 * Source      [madsen2004] algorithm 3.16; [more1978] for D                   Check  published/strd.test.ts
 */
import { linearLeastSquares } from "./linear-least-squares.ts";

export type LeastSquaresProblem = {
  /** writes the m residuals at p */
  readonly residuals: (p: Float64Array, out: Float64Array) => void;
  /** writes the m x n Jacobian, row-major; central differences where absent */
  readonly jacobian?: (p: Float64Array, out: Float64Array) => void;
  readonly start: readonly number[];
  readonly count: number;
  readonly maxIterations?: number;
};

export type LeastSquaresFit = {
  readonly status: "converged" | "not-converged" | "singular";
  readonly parameters: Float64Array;
  /** n x n, row-major, of unit variance: times `residualVariance` where the weights are relative; null when singular */
  readonly unitCovariance: Float64Array | null;
  readonly residuals: Float64Array;
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
  readonly residualVariance: number;
  readonly iterations: number;
  readonly message: string;
};

const DEFAULT_ITERATIONS = 500;

export function levenbergMarquardt(problem: LeastSquaresProblem): LeastSquaresFit {
  const m = problem.count;
  const n = problem.start.length;
  const jacobianOf = problem.jacobian ?? centralDifferences(problem, m);
  let p = Float64Array.from(problem.start);
  let r = evaluate(problem, p);
  let sum = sumOfSquares(r);
  if (!Number.isFinite(sum)) throw new Error("Assertion failed: residuals are finite at the start");
  const jacobian = new Float64Array(m * n);
  const scale = new Float64Array(n);
  jacobianOf(p, jacobian);
  widenScale(scale, jacobian, m);
  let damping = 1e-3;
  let growth = 2;
  let status: LeastSquaresFit["status"] = "not-converged";
  let iterations = 0;
  const limit = problem.maxIterations ?? DEFAULT_ITERATIONS;
  while (iterations < limit) {
    iterations++;
    const step = dampedStep(jacobian, r, scale, damping);
    if (step === null) {
      status = "singular";
      break;
    }
    const predicted = predictedFall(jacobian, r, step);
    const trial = p.map((value, j) => value + step[j]!);
    const trialResiduals = evaluate(problem, trial);
    const trialSum = sumOfSquares(trialResiduals);
    const still = isStill(p, step);
    const gain = (sum - trialSum) / predicted;
    if (trialSum <= sum && Number.isFinite(trialSum)) {
      const settled = still || predicted <= 1e-15 * sum || sum === 0;
      p = trial;
      r = trialResiduals;
      sum = trialSum;
      jacobianOf(p, jacobian);
      widenScale(scale, jacobian, m);
      damping *= Math.max(1 / 3, 1 - (2 * gain - 1) ** 3);
      growth = 2;
      if (settled) {
        status = "converged";
        break;
      }
    } else {
      if (still || predicted <= 1e-15 * sum) {
        status = "converged";
        break;
      }
      damping *= growth;
      growth *= 2;
    }
  }
  // differences leave noise of 1e-10 in a column, which would pass for independence
  const rankTolerance = problem.jacobian === undefined ? 1e-8 : 1e-13;
  return finish({ p, r, sum, jacobian, m, n, status, iterations, limit, rankTolerance });
}

function finish(at: {
  readonly p: Float64Array;
  readonly r: Float64Array;
  readonly sum: number;
  readonly jacobian: Float64Array;
  readonly m: number;
  readonly n: number;
  readonly status: LeastSquaresFit["status"];
  readonly iterations: number;
  readonly limit: number;
  readonly rankTolerance: number;
}): LeastSquaresFit {
  const { p, r, sum, jacobian, m, n, iterations } = at;
  const linear = linearLeastSquares(jacobian, r, n, at.rankTolerance);
  const singular = linear.status === "rank-deficient";
  const status = singular && at.status === "converged" ? "singular" : at.status;
  const messages = {
    converged: `Converged after ${iterations} iterations.`,
    "not-converged": `Did not settle within ${at.limit} iterations.`,
    singular: `The data do not determine parameter ${singular ? linear.column + 1 : "s"}.`,
  };
  return {
    status,
    parameters: p,
    unitCovariance: singular ? null : linear.unitCovariance,
    residuals: r,
    residualSumOfSquares: sum,
    degreesOfFreedom: m - n,
    residualVariance: m > n ? sum / (m - n) : Number.NaN,
    iterations,
    message: messages[status],
  };
}

/** d of (1); null where even the damped system is singular. */
function dampedStep(
  jacobian: Float64Array,
  r: Float64Array,
  scale: Float64Array,
  damping: number,
): Float64Array | null {
  const n = scale.length;
  const m = r.length;
  const design = new Float64Array((m + n) * n);
  design.set(jacobian);
  const values = new Float64Array(m + n);
  for (let i = 0; i < m; i++) values[i] = -r[i]!;
  const root = Math.sqrt(damping);
  for (let j = 0; j < n; j++) design[(m + j) * n + j] = root * scale[j]!;
  const solved = linearLeastSquares(design, values, n);
  return solved.status === "solved" ? solved.parameters : null;
}

/** |r|^2 - |r + J d|^2 */
function predictedFall(jacobian: Float64Array, r: Float64Array, step: Float64Array): number {
  const n = step.length;
  let fall = 0;
  for (let i = 0; i < r.length; i++) {
    let change = 0;
    for (let j = 0; j < n; j++) change += jacobian[i * n + j]! * step[j]!;
    fall -= change * (2 * r[i]! + change);
  }
  return fall;
}

function isStill(p: Float64Array, step: Float64Array): boolean {
  return step.every((d, j) => Math.abs(d) <= 1e-12 * Math.abs(p[j]!) + Number.MIN_VALUE);
}

function widenScale(scale: Float64Array, jacobian: Float64Array, m: number): void {
  const n = scale.length;
  for (let j = 0; j < n; j++) {
    let norm = 0;
    for (let i = 0; i < m; i++) norm = Math.hypot(norm, jacobian[i * n + j]!);
    scale[j] = Math.max(scale[j]!, norm, Number.MIN_VALUE);
  }
}

function evaluate(problem: LeastSquaresProblem, p: Float64Array): Float64Array {
  const out = new Float64Array(problem.count);
  problem.residuals(p, out);
  return out;
}

function sumOfSquares(r: Float64Array): number {
  let sum = 0;
  for (const value of r) sum += value * value;
  return sum;
}

function centralDifferences(problem: LeastSquaresProblem, m: number): (p: Float64Array, out: Float64Array) => void {
  const above = new Float64Array(m);
  const below = new Float64Array(m);
  return (p, out) => {
    const n = p.length;
    const moved = p.slice();
    for (let j = 0; j < n; j++) {
      const h = Math.cbrt(Number.EPSILON) * (Math.abs(p[j]!) || 1e-6);
      moved[j] = p[j]! + h;
      problem.residuals(moved, above);
      moved[j] = p[j]! - h;
      problem.residuals(moved, below);
      moved[j] = p[j]!;
      for (let i = 0; i < m; i++) out[i * n + j] = (above[i]! - below[i]!) / (2 * h);
    }
  };
}
