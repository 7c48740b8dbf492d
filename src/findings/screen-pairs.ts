/**
 * Which pairs of causes are worth integrating.
 *
 * Equation    U = max over nodes of both of max over c, c' of d.(c x + c' x') - |c x + c' x'|^2/2 + what is not Gaussian
 * Symbols     c, c' 0.8 to 1.25: sizes between the nodes, taken as scalings of the nearest
 * Rule        a pair whose prior x exp(U), which no integral over sizes exceeds, is below `NEGLIGIBLE` of all that is weighed
 *             already is left out; how much that could be at most is told
 */
import type { Cause } from "./catalogue.ts";
import { LAGRANGE_POINTS } from "./lagrange.ts";
import { crossProducts, type SizeGrid, type SizePart } from "./size-grid.ts";

const LEAST = 0.8;
const MOST = 1.25;
const NEGLIGIBLE = 1e-5;

export type CandidatePair = { readonly causes: readonly [Cause, Cause]; readonly logPrior: number };

export type Screened = {
  readonly kept: readonly CandidatePair[];
  /** at most this share of the whole lay in the pairs left out */
  readonly left: number;
};

/** `logTotal`: ln of everything weighed so far, against healthy. Workshop checks never add to a bound: see known.ts. */
export function screenPairs(pairs: readonly CandidatePair[], grid: SizeGrid, logTotal: number): Screened {
  const kept: CandidatePair[] = [];
  let left = 0;
  for (const pair of pairs) {
    const [a, b] = pair.causes;
    const most = pair.logPrior + highest(grid, grid.parts.get(a)!, grid.parts.get(b)!) - logTotal;
    if (most > Math.log(NEGLIGIBLE)) kept.push(pair);
    else left += Math.exp(most);
  }
  return { kept, left };
}

function highest(grid: SizeGrid, ones: readonly SizePart[], others: readonly SizePart[]): number {
  let best = -Infinity;
  for (const one of ones) {
    for (const other of others) {
      const cross = crossProducts(grid, one, other);
      for (let a = 0; a < one.nodes; a++) {
        for (let b = 0; b < other.nodes; b++) {
          const value = scaledBest(
            one.dots[a]!,
            other.dots[b]!,
            one.band[a * LAGRANGE_POINTS]!,
            other.band[b * LAGRANGE_POINTS]!,
            cross[a * other.nodes + b]!,
          );
          const signs = Math.min(grid.mostSigns, one.beyond.signs[a]! + other.beyond.signs[b]!);
          best = Math.max(best, value + one.beyond.normaliser[a]! + other.beyond.normaliser[b]! + signs);
        }
      }
    }
  }
  return best;
}

/** max over c, c' in the box of c p + c' q - (c^2 xx + c'^2 yy + 2 c c' xy)/2, by alternating the two. */
function scaledBest(p: number, q: number, xx: number, yy: number, xy: number): number {
  const clip = (c: number) => Math.min(MOST, Math.max(LEAST, c));
  let c = 1;
  let d = 1;
  for (let n = 0; n < 3; n++) {
    c = xx > 0 ? clip((p - d * xy) / xx) : 1;
    d = yy > 0 ? clip((q - c * xy) / yy) : 1;
  }
  return c * p + d * q - 0.5 * (c * c * xx + d * d * yy + 2 * c * d * xy);
}
