/**
 * Causes that this recording cannot tell apart.
 *
 * Equation    d2(i, j) = min over sizes s of j of |x_i - c x_j(s)|^2;  half of d2 is the expected ln of the Bayes factor
 *             between them
 * Symbols     x coordinates of the predicted shift (tally/shift-geometry) | c 0.55 to 1.8, fine adjustment of the size between
 *             the sizes tried
 * Rule        d2 < 2.2: not told apart. Even where i is true a Bayes factor below three is expected between them, which is not
 *             worth more than a bare mention [kass1995]. A cause for which less than tenfold against healthy is expected
 *             (|x|^2 < 4.6) is not visible here, which is said elsewhere
 */
import { dot } from "../numerics/index.ts";
import { LAGRANGE_POINTS } from "./lagrange.ts";
import { ownSize } from "./own-prediction.ts";
import { placeIn, type SizeGrid } from "./size-grid.ts";
import type { Weighed, WeighedCause } from "./weigh-all.ts";

const TOLD_APART = 2 * Math.log(3);
/** the same for being seen at all: tenfold against healthy */
const SEEN = 2 * Math.log(10);

export type Visibility = {
  readonly groups: readonly (readonly WeighedCause[])[];
  readonly invisible: readonly WeighedCause[];
};

export function inseparableCauses({ causes, grid }: Weighed): Visibility {
  const own = causes.map((cause) => ownCoordinates(cause, grid));
  const norms = own.map((x) => dot(x, x));
  const seen = (i: number) => norms[i]! >= SEEN;
  const alike = (i: number, j: number) => nearest(own[i]!, norms[i]!, causes[j]!, grid) < TOLD_APART;
  const groups: WeighedCause[][] = [];
  const taken = new Set<number>();
  causes.forEach((cause, i) => {
    if (taken.has(i) || !seen(i)) return;
    const members = causes.map((_, j) => j).filter((j) => j !== i && !taken.has(j) && seen(j) && alike(i, j));
    if (members.length === 0) return;
    for (const m of [i, ...members]) taken.add(m);
    groups.push([cause, ...members.map((j) => causes[j]!)]);
  });
  return { groups, invisible: causes.filter((_, i) => !seen(i)) };
}

function ownCoordinates(weighed: WeighedCause, grid: SizeGrid): Float64Array {
  const { size, shape } = ownSize(weighed);
  const amount = weighed.cause.kind === "ratio" ? Math.log(size) : size;
  const part = grid.parts.get(weighed.cause)!.find((p) => p.shape === shape && p.sign === Math.sign(amount))!;
  const weights = new Float64Array(LAGRANGE_POINTS);
  const t = Math.min(part.high, Math.max(part.low, Math.log(Math.abs(amount))));
  const first = part.from + placeIn(part, t, weights);
  const x = new Float64Array(grid.dimensions);
  for (let a = 0; a < LAGRANGE_POINTS; a++)
    for (let d = 0; d < x.length; d++)
      x[d] = x[d]! + weights[a]! * grid.coordinates[(first + a) * grid.dimensions + d]!;
  return x;
}

function nearest(own: Float64Array, norm: number, other: WeighedCause, grid: SizeGrid): number {
  let least = Infinity;
  for (const part of grid.parts.get(other.cause)!) {
    for (let n = part.from; n < part.from + part.nodes; n++) {
      const x = grid.coordinates.subarray(n * grid.dimensions, (n + 1) * grid.dimensions);
      const cross = dot(own, x);
      const square = dot(x, x);
      const c = square > 0 ? Math.min(1.8, Math.max(0.55, cross / square)) : 1;
      least = Math.min(least, norm - 2 * c * cross + c * c * square);
    }
  }
  return least;
}
