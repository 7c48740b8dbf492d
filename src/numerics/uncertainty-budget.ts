/**
 * Combined uncertainty of a result from those of its inputs, with the budget that shows where it comes from.
 *
 * Equation    u_c^2 = sum_i sum_j c_i c_j r_ij u_i u_j,   c_i = df/dx_i                                          (1)
 *             nu_eff = u_c^4 / sum_i (c_i u_i)^4/nu_i                                                          (2)
 *             U = t_0.975(nu_eff) u_c                                                                          (3)
 * Symbols     u standard uncertainty | c sensitivity | r correlation | nu degrees of freedom | U expanded, 95 %
 * Validity    f nearly linear over +-u_i; (2) for uncorrelated inputs (with correlations it is given as infinite where all nu are,
 *             else as the least nu: cautious)
 * Numerics    c_i u_i is taken as (f(x_i + u_i) - f(x_i - u_i))/2, which sees a bend that a derivative would miss [gum2008] 5.1.3 note 2
 * Source      [gum2008] 5.1, 5.2, G.4                                        Check  published/gum2008.test.ts
 */
import { studentQuantile } from "./distributions.ts";
import { normalQuantile } from "./normal-distribution.ts";

export type UncertainInput = {
  readonly name: string;
  readonly value: number;
  readonly standardUncertainty: number;
  /** infinite where not given */
  readonly degreesOfFreedom?: number;
};

export type BudgetLine = UncertainInput & {
  /** df/dx, 0 where the input has no uncertainty */
  readonly sensitivity: number;
  /** c u, in the unit of the result, signed */
  readonly contribution: number;
  /** share of the combined variance, 0 to 1 when uncorrelated */
  readonly share: number;
};

export type UncertaintyBudget = {
  readonly value: number;
  readonly standardUncertainty: number;
  readonly effectiveDegreesOfFreedom: number;
  readonly coverageFactor: number;
  /** 95 % */
  readonly expandedUncertainty: number;
  /** largest contribution first */
  readonly lines: readonly BudgetLine[];
};

/** Correlation of inputs i and j; 0 where not given. Only i < j is asked for. */
export type Correlation = (i: number, j: number) => number;

export function propagateUncertainty(
  model: (values: readonly number[]) => number,
  inputs: readonly UncertainInput[],
  correlation?: Correlation,
): UncertaintyBudget {
  const values = inputs.map((input) => input.value);
  const contributions = inputs.map((input, i) => {
    const above = values.with(i, input.value + input.standardUncertainty);
    const below = values.with(i, input.value - input.standardUncertainty);
    return input.standardUncertainty === 0 ? 0 : (model(above) - model(below)) / 2;
  });
  const variance = combine(contributions, correlation);
  const standardUncertainty = Math.sqrt(variance);
  const effectiveDegreesOfFreedom = effectiveDegrees(inputs, contributions, variance, correlation !== undefined);
  const coverageFactor = Number.isFinite(effectiveDegreesOfFreedom)
    ? studentQuantile(0.975, effectiveDegreesOfFreedom)
    : normalQuantile(0.975);
  const lines = inputs
    .map((input, i) => {
      const contribution = contributions[i] ?? 0;
      const sensitivity = input.standardUncertainty === 0 ? 0 : contribution / input.standardUncertainty;
      return { ...input, sensitivity, contribution, share: variance === 0 ? 0 : contribution ** 2 / variance };
    })
    .sort((a, b) => Math.abs(b.contribution) - Math.abs(a.contribution));
  return {
    value: model(values),
    standardUncertainty,
    effectiveDegreesOfFreedom,
    coverageFactor,
    expandedUncertainty: coverageFactor * standardUncertainty,
    lines,
  };
}

function combine(contributions: readonly number[], correlation: Correlation | undefined): number {
  let variance = 0;
  for (const [i, ci] of contributions.entries()) {
    variance += ci * ci;
    if (correlation === undefined) continue;
    for (let j = i + 1; j < contributions.length; j++) variance += 2 * correlation(i, j) * ci * (contributions[j] ?? 0);
  }
  return Math.max(0, variance);
}

function effectiveDegrees(
  inputs: readonly UncertainInput[],
  contributions: readonly number[],
  variance: number,
  correlated: boolean,
): number {
  if (correlated) return Math.min(...inputs.map((input) => input.degreesOfFreedom ?? Number.POSITIVE_INFINITY));
  let sum = 0;
  for (const [i, input] of inputs.entries()) {
    if (input.degreesOfFreedom !== undefined) sum += (contributions[i] ?? 0) ** 4 / input.degreesOfFreedom;
  }
  return sum === 0 ? Number.POSITIVE_INFINITY : variance ** 2 / sum;
}

/** Standard uncertainty of a value known only to lie within +-halfWidth, anywhere alike [gum2008] 4.3.7. */
export function rectangularUncertainty(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}
