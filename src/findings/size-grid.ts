/**
 * Sizes of every cause laid out on a grid, so that the evidence of any size, and of any two causes together, is read off it.
 *
 * Equation    t = ln of the size's amount, nodes evenly spread; x(t) = sum_a w_a(t) x_a by four-point Lagrange weights
 *             R(t) = d.x(t) - x(t).x(t)/2 + beyond(t)                            ln evidence against healthy
 *             R(t, t') = R'(t) + R'(t') - x(t).x'(t') + least of both signs       of two causes together (weigh-pair.ts)
 * Symbols     x, d as in tally/shift-geometry | beyond what following the air otherwise than one to one and one-sided quantities
 *             add, exact at every node that is not beyond doubt | R' with the evidence's own normaliser only of what lies beyond
 * Accuracy    within 0.1 of the exact evidence wherever that is within 8 of its best (tested)
 */
import { evidenceParts, type Prepared, type Shift, shiftGeometry, type TallyModel } from "../tally/index.ts";
import { type Beyond, beyondGaussian, type ExactNode } from "./beyond-gaussian.ts";
import type { Cause } from "./catalogue.ts";
import type { Prediction } from "./cause.ts";
import { partsOf } from "./evidence-of.ts";
import { LAGRANGE_POINTS, lagrange } from "./lagrange.ts";
import { sidesOf, sizeAt } from "./size-scale.ts";

/** between neighbours, in t; closer where the response to the air changes with the size */
const STEP = 0.3;
const STEP_FOLLOWING = 0.2;
const LEAST_NODES = 7;
/** ln evidence against healthy below which a size is out of the question, whatever the Gaussian leaves out */
const BEYOND_DOUBT = -150;

type Plan = {
  readonly cause: Cause;
  readonly sign: 1 | -1;
  readonly shape: number;
  /** ln(share of the side x weight of the shape) */
  readonly logWeight: number;
  readonly low: number;
  readonly high: number;
  readonly nodes: number;
  /** first node among all of the grid */
  readonly from: number;
};

export type SizePart = Plan & {
  /** per node: d.x, and x.x with itself and the three nodes after it */
  readonly dots: Float64Array;
  readonly band: Float64Array;
  readonly beyond: Beyond;
};

export type SizeGrid = {
  readonly parts: ReadonlyMap<Cause, readonly SizePart[]>;
  readonly dimensions: number;
  /** one row of coordinates a node */
  readonly coordinates: Float64Array;
  /** some evidence of this grid is not Gaussian */
  readonly corrected: boolean;
  /** the most that keeping signs can add to the evidence of anything, against healthy */
  readonly mostSigns: number;
};

export function laySizes(causes: readonly Cause[], healthy: Prepared): SizeGrid {
  const predictions: Prediction[] = [];
  const plans = causes.flatMap((cause) => plan(cause, healthy.model, predictions));
  const shifts = predictions.map(({ effect, standing }): Shift => ({ witnesses: effect, standing }));
  const { dimensions, shifts: coordinates, data } = shiftGeometry(healthy, shifts);
  const base = evidenceParts(healthy, null);
  const bounded = healthy.oneSided.forms.length > 0;
  const parts = new Map<Cause, SizePart[]>();
  let corrected = false;
  for (const own of plans) {
    const { dots, band } = productsOf(own, dimensions, coordinates, data);
    const exact = Array.from({ length: own.nodes }, (_, n): ExactNode => {
      const prediction = predictions[own.from + n]!;
      const gaussian = dots[n]! - 0.5 * band[n * LAGRANGE_POINTS]!;
      const needed = (bounded || prediction.response !== null) && gaussian > BEYOND_DOUBT;
      return needed ? partsOf(prediction, healthy) : null;
    });
    corrected ||= exact.some((parts) => parts !== null);
    const part = { ...own, dots, band, beyond: beyondGaussian(exact, base, dots, band) };
    parts.set(own.cause, [...(parts.get(own.cause) ?? []), part]);
  }
  return { parts, dimensions, coordinates, corrected, mostSigns: -base.signs - healthy.oneSided.logPrior };
}

/** Lays the sizes of a cause and puts what each would do into the list. */
function plan(cause: Cause, model: TallyModel, predictions: Prediction[]): Plan[] {
  return sidesOf(cause, model).flatMap(({ sign, share, low, high }) =>
    cause.law.shapes(model).map((shape) => {
      const predict = (t: number) => cause.law.predict(model, sizeAt(cause, sign, t), shape.value);
      const step = predict(low).response === null ? STEP : STEP_FOLLOWING;
      const nodes = Math.max(LEAST_NODES, Math.ceil((high - low) / step) + 1);
      const from = predictions.length;
      for (let n = 0; n < nodes; n++) {
        predictions.push(predict(low + ((high - low) * n) / (nodes - 1)));
      }
      return { cause, sign, shape: shape.value, logWeight: Math.log(share * shape.weight), low, high, nodes, from };
    }),
  );
}

function productsOf({ nodes, from }: Plan, dimensions: number, coordinates: Float64Array, data: Float64Array) {
  const dots = new Float64Array(nodes);
  const band = new Float64Array(nodes * LAGRANGE_POINTS);
  for (let n = 0; n < nodes; n++) {
    const row = (from + n) * dimensions;
    for (let d = 0; d < dimensions; d++) {
      const x = coordinates[row + d]!;
      dots[n] = dots[n]! + data[d]! * x;
      for (let k = 0; k < LAGRANGE_POINTS && n + k < nodes; k++)
        band[n * LAGRANGE_POINTS + k] = band[n * LAGRANGE_POINTS + k]! + x * coordinates[row + k * dimensions + d]!;
    }
  }
  return { dots, band };
}

/** Place of t among the nodes of a part, with its four weights. */
export function placeIn(part: SizePart, t: number, weights: Float64Array): number {
  const x = ((t - part.low) / (part.high - part.low)) * (part.nodes - 1);
  return lagrange(x, part.nodes, weights);
}

/** The Gaussian part of R at a place. */
export function gaussianAt(part: SizePart, first: number, weights: Float64Array): number {
  let linear = 0;
  let square = 0;
  for (let a = 0; a < LAGRANGE_POINTS; a++) {
    const w = weights[a]!;
    linear += w * part.dots[first + a]!;
    const row = (first + a) * LAGRANGE_POINTS;
    square += w * w * part.band[row]!;
    for (let b = a + 1; b < LAGRANGE_POINTS; b++) square += 2 * w * weights[b]! * part.band[row + b - a]!;
  }
  return linear - 0.5 * square;
}

/** A quantity given at the nodes, at a place. */
export function interpolated(values: Float64Array, first: number, weights: Float64Array): number {
  let sum = 0;
  for (let a = 0; a < LAGRANGE_POINTS; a++) sum += weights[a]! * values[first + a]!;
  return sum;
}

/** R at a place: ln evidence of this size alone against healthy. */
export function logRatioAt(part: SizePart, first: number, weights: Float64Array): number {
  return gaussianAt(part, first, weights) + interpolated(part.beyond.whole, first, weights);
}

/** x_a . x_b of all nodes of two parts, row by row of the first. */
export function crossProducts(grid: SizeGrid, one: SizePart, other: SizePart): Float64Array {
  const { dimensions, coordinates } = grid;
  const out = new Float64Array(one.nodes * other.nodes);
  for (let a = 0; a < one.nodes; a++) {
    const rowA = (one.from + a) * dimensions;
    for (let b = 0; b < other.nodes; b++) {
      const rowB = (other.from + b) * dimensions;
      let sum = 0;
      for (let d = 0; d < dimensions; d++) sum += coordinates[rowA + d]! * coordinates[rowB + d]!;
      out[a * other.nodes + b] = sum;
    }
  }
  return out;
}
