/**
 * What a healthy job has taught of its engine: its functions at states it visited, before and after looking.
 *
 * Equation    theta = G beta + nugget;  before: G G' + left + nugget;  after: mean G E[beta], covariance G V G' + left + nugget
 * Symbols     theta ln departures | G rows of function-rows.ts | V covariance of beta given that the engine is healthy
 * Why both    what the recording itself said is the one less the other; passing on the belief as well would count it twice
 * Numerics    the nugget, 0.1 % of each value, keeps neighbouring values apart
 */
import { logBreathingMeanAt } from "../breathing-mean.ts";
import type { Prepared } from "../likelihood.ts";
import { unknownPosterior } from "../posterior.ts";
import type { TallyModel } from "../tally-model.ts";
import { functionRows, type Told } from "./function-rows.ts";
import { spreadOut } from "./knots.ts";
import {
  type FunctionState,
  holdsQuantity,
  REFERENCE_QUANTITIES,
  type ReferenceQuantity,
  STANDARD_STATE,
} from "./reference-quantities.ts";

export type ReferenceValue = {
  readonly quantity: ReferenceQuantity;
  readonly state: FunctionState;
  /** ln efficiency expected there before looking, which the value departs from; null for the others */
  readonly expected: number | null;
  readonly mean: number;
};

export type HealthyReference = {
  readonly values: readonly ReferenceValue[];
  /** n*n, symmetric */
  readonly covariance: Float64Array;
  readonly before: Float64Array;
};

/** variance that each value has of its own (ln): 0.1 % */
export const NUGGET = 1e-6;
/** distance of the states told, in lengths over which the functions change */
const SPACING = 0.4;
const MOST_FLOWS = 9;
const MOST_STATES = 14;

export function healthyReference(prepared: Prepared): HealthyReference {
  const { model } = prepared;
  const told = REFERENCE_QUANTITIES.filter((q) => holdsQuantity(model, q)).flatMap((quantity) =>
    statesOf(model, quantity).map((state) => ({ quantity, state })),
  );
  const rows = functionRows(model, told);
  const { beta, covariance } = unknownPosterior(prepared, null);
  const n = told.length;
  const after = new Float64Array(n * n);
  const before = new Float64Array(n * n);
  const through = rows.map(({ row }) => times(covariance, row));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const own = i === j ? rows[i]!.left + NUGGET : 0;
      after[i * n + j] = inner(rows[j]!.row, through[i]!) + own;
      before[i * n + j] = inner(rows[j]!.row, rows[i]!.row) + own;
    }
  }
  const values = told.map((t, i) => ({ ...t, expected: expectedOf(model, t), mean: inner(rows[i]!.row, beta) }));
  return { values, covariance: after, before };
}

/** Only some of the values: the others left aside, as if never told. */
export function restricted(
  reference: HealthyReference,
  keep: (quantity: ReferenceQuantity) => boolean,
): HealthyReference {
  const kept = reference.values.map((_, i) => i).filter((i) => keep(reference.values[i]!.quantity));
  const n = reference.values.length;
  const part = (matrix: Float64Array) => Float64Array.from(kept.flatMap((i) => kept.map((j) => matrix[i * n + j]!)));
  return {
    values: kept.map((i) => reference.values[i]!),
    covariance: part(reference.covariance),
    before: part(reference.before),
  };
}

/** What is expected of the breathing at a state by this job's engine file and assumptions; null for other quantities. */
export function expectedOf(model: TallyModel, { quantity, state }: Told): number | null {
  return quantity.id === "breathing" ? logBreathingMeanAt(model.engine, model.assumptions, state) : null;
}

function statesOf(model: TallyModel, { along }: ReferenceQuantity): FunctionState[] {
  if (along === "nothing") return [STANDARD_STATE];
  const { physics, assumptions: a } = model;
  const known = model.points
    .map((_, i) => i)
    .filter((i) => physics.air[i]! > 0 && physics.pressure[i]! > 0 && physics.speed[i]! > 0);
  const flows = known.map((i) => [Math.log(physics.air[i]!) / a.meterLength]);
  const places = known.map((i) => [
    Math.log(physics.speed[i]!) / a.breathingLengthSpeed,
    Math.log(physics.pressure[i]!) / a.breathingLengthPressure,
  ]);
  const chosen = along === "flow" ? spreadOut(flows, SPACING, MOST_FLOWS) : spreadOut(places, SPACING, MOST_STATES);
  return chosen.map((at) => {
    const i = known[at]!;
    return {
      speed: physics.speed[i]!,
      pressure: physics.pressure[i]!,
      exhaustPressure: physics.exhaustPressure[i]!,
      air: physics.air[i]!,
      intakeTemperature: physics.intakeTemperature[i]!,
      effectivePulse: physics.effectivePulse[i]!,
    };
  });
}

function times(matrix: Float64Array, x: Float64Array): Float64Array {
  const n = x.length;
  return x.map((_, i) => inner(matrix.subarray(i * n, (i + 1) * n), x));
}

function inner(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, v, i) => sum + v * b[i]!, 0);
}
