/**
 * numerics: sums, interpolation, roots, least squares, distributions, seeded random.
 * In: plain numbers and Float64Arrays. Out: the same, and outcomes with a status.
 * Refuses: units, physics, and to call a fit good that has not converged.
 */

export { type Density, densityNodes, densityQuantile, integrateExponential } from "./adaptive-quadrature.ts";
export {
  chiSquareCdf,
  chiSquareQuantile,
  chiSquareUpper,
  type FisherDegrees,
  fisherCdf,
  fisherQuantile,
  fisherUpper,
  studentCdf,
  studentQuantile,
  studentUpper,
} from "./distributions.ts";
export { erf, erfc } from "./error-function.ts";
export { type Bracket, findRoot, type RootOutcome } from "./find-root.ts";
export { firstOrderLag, lagResponse, undoFirstOrderLag } from "./first-order-lag.ts";
export { type BetaArguments, incompleteBeta, upperIncompleteBeta } from "./incomplete-beta.ts";
export { lowerGamma, upperGamma } from "./incomplete-gamma.ts";
export { type LeastSquaresFit, type LeastSquaresProblem, levenbergMarquardt } from "./levenberg-marquardt.ts";
export {
  cholesky,
  choleskyInverse,
  choleskySolve,
  dot,
  logDeterminant,
  solveLower,
  solveUpper,
} from "./linear-algebra.ts";
export { type LinearFit, type LinearFitOutcome, linearLeastSquares } from "./linear-least-squares.ts";
export { logGamma } from "./log-gamma.ts";
export {
  evaluateInInterval,
  evaluateMonotoneCubic,
  evaluateMonotoneCubicAt,
  intervalOf,
  type MonotoneCubic,
  monotoneCubic,
  slopeOfMonotoneCubic,
} from "./monotone-cubic.ts";
export { inverseMills, logNormalCdf, logNormalDensity, normalCdf, normalQuantile } from "./normal-distribution.ts";
export { logOrthantProbability, type OrthantMoments, orthantMoments } from "./orthant.ts";
export { type Coordinates, pivotedCholesky } from "./pivoted-cholesky.ts";
export { requireFinite, requirePositive, requireWithin } from "./require-range.ts";
export { type SeededRandom, seededRandom } from "./seeded-random.ts";
export {
  type BudgetLine,
  type Correlation,
  propagateUncertainty,
  rectangularUncertainty,
  type UncertainInput,
  type UncertaintyBudget,
} from "./uncertainty-budget.ts";
