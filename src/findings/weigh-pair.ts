/**
 * Evidence of two causes at once, both sizes and forms integrated over their priors.
 *
 * Equation    Z = sum over sides and shapes of both  integral integral p(t) p(t') exp(R(t, t') + ln known) dt dt'
 *             R(t, t') = G(t) + G'(t') - x(t).x'(t') + normalisers + min(signs + signs', most)
 * Symbols     G Gaussian part of one alone | most what keeping every sign could add
 * Assumes     of what is not Gaussian (beyond-gaussian.ts) normalisers and signs add; where it matters the whole is set right by
 *             the exact evidence at the best pair of sizes
 * Source      quadrature numerics/adaptive-quadrature, one within the other; against brute force (tested)
 */
import { type Density, densityNodes, integrateExponential } from "../numerics/index.ts";
import type { Prepared } from "../tally/index.ts";
import type { Cause } from "./catalogue.ts";
import { evidenceOf, together } from "./evidence-of.ts";
import { type Known, NOTHING_KNOWN } from "./known.ts";
import { LAGRANGE_POINTS } from "./lagrange.ts";
import { logSum } from "./log-sum.ts";
import { crossProducts, gaussianAt, interpolated, placeIn, type SizeGrid, type SizePart } from "./size-grid.ts";
import type { SizeNode } from "./size-nodes.ts";
import { logSizePrior, sizeAt } from "./size-scale.ts";
import { QUADRATURE } from "./weigh-cause.ts";

export type PairWeight = {
  readonly causes: readonly [Cause, Cause];
  readonly logRatio: number;
  /** posterior of each size given that both are at work */
  readonly nodes: readonly [readonly SizeNode[], readonly SizeNode[]];
};

export function weighPair(a: Cause, b: Cause, grid: SizeGrid, known: Known): PairWeight {
  const joints = grid.parts
    .get(a)!
    .flatMap((one) =>
      grid.parts.get(b)!.map((other) => ({ one, other, ...integrate(pairRatio(one, other, grid, known)) })),
    );
  const total = logSum(joints.map((j) => j.logWeight));
  const nodes: [SizeNode[], SizeNode[]] = [[], []];
  for (const { one, other, logWeight, outer, innerAt } of joints) {
    const share = Math.exp(logWeight - total);
    if (share < 1e-4) continue;
    for (const { x, weight } of densityNodes(outer)) {
      if (weight * share < 1e-5) continue;
      nodes[0].push({ size: sizeAt(a, one.sign, x), shape: one.shape, weight: weight * share });
      for (const inner of densityNodes(innerAt(x)))
        nodes[1].push({
          size: sizeAt(b, other.sign, inner.x),
          shape: other.shape,
          weight: inner.weight * weight * share,
        });
    }
  }
  return { causes: [a, b], logRatio: total, nodes: [merged(nodes[0]), merged(nodes[1])] };
}

type PairRatio = {
  readonly one: SizePart;
  readonly other: SizePart;
  /** ln evidence against healthy along the other's size, the one's held at t */
  readonly along: (t: number) => (u: number) => number;
};

function pairRatio(one: SizePart, other: SizePart, grid: SizeGrid, known: Known): PairRatio {
  const cross = crossProducts(grid, one, other);
  const w = new Float64Array(LAGRANGE_POINTS);
  const v = new Float64Array(LAGRANGE_POINTS);
  /** x(t).x'_n of the other's nodes, for the t of the latest `along` */
  const line = new Float64Array(other.nodes);
  const faultAt = ({ cause, sign }: SizePart, t: number) => ({
    cause: cause.id,
    bank: cause.bank,
    size: sizeAt(cause, sign, t),
  });
  const along = (t: number) => {
    const first = placeIn(one, t, w);
    for (let n = 0; n < other.nodes; n++) {
      let sum = 0;
      for (let p = 0; p < LAGRANGE_POINTS; p++) sum += w[p]! * cross[(first + p) * other.nodes + n]!;
      line[n] = sum;
    }
    const ratio = gaussianAt(one, first, w) + interpolated(one.beyond.normaliser, first, w);
    const signs = interpolated(one.beyond.signs, first, w);
    const fault = faultAt(one, t);
    return (u: number) => {
      const place = placeIn(other, u, v);
      const own = gaussianAt(other, place, v) + interpolated(other.beyond.normaliser, place, v);
      const kept = Math.min(grid.mostSigns, signs + interpolated(other.beyond.signs, place, v));
      return ratio + own - interpolated(line, place, v) + kept + known([fault, faultAt(other, u)]);
    };
  };
  return { one, other, along };
}

function integrate({ one, other, along }: PairRatio): {
  logWeight: number;
  outer: Density;
  innerAt: (t: number) => Density;
} {
  const over = (f: (x: number) => number, part: SizePart) =>
    integrateExponential(
      (x) => f(x) + logSizePrior(part, x),
      part.low,
      part.high,
      QUADRATURE.samples,
      QUADRATURE.tolerance,
    );
  const innerAt = (t: number) => over(along(t), other);
  const outer = over((t) => innerAt(t).logIntegral, one);
  return { logWeight: one.logWeight + other.logWeight + outer.logIntegral, outer, innerAt };
}

/** Few enough nodes for what reads them, ascending, weights summing to one. */
function merged(nodes: SizeNode[]): SizeNode[] {
  const sorted = nodes.sort((a, b) => a.size - b.size);
  const total = sorted.reduce((sum, n) => sum + n.weight, 0);
  const out: SizeNode[] = [];
  for (const node of sorted) {
    const last = out[out.length - 1];
    const weight = node.weight / total;
    if (last !== undefined && last.shape === node.shape && last.weight + weight < MERGED)
      out[out.length - 1] = {
        size: (last.size * last.weight + node.size * weight) / (last.weight + weight),
        shape: node.shape,
        weight: last.weight + weight,
      };
    else out.push({ ...node, weight });
  }
  return out;
}

const MERGED = 0.01;

/** What the exact evidence says beyond the grid's at the middle of both sizes. */
export function exactCorrection(pair: PairWeight, grid: SizeGrid, healthy: Prepared, logHealthy: number): number {
  const places = pair.causes.map((cause, i) => bestPlace(cause, pair.nodes[i]!, grid)) as [Place, Place];
  const predictions = places.map(({ part, t }) =>
    part.cause.law.predict(healthy.model, sizeAt(part.cause, part.sign, t), part.shape),
  );
  const exact =
    evidenceOf(together(predictions[0]!, predictions[1]!, healthy.model.witnesses.length), healthy) - logHealthy;
  return exact - pairRatio(places[0].part, places[1].part, grid, NOTHING_KNOWN).along(places[0].t)(places[1].t);
}

type Place = { readonly part: SizePart; readonly t: number };

function bestPlace(cause: Cause, nodes: readonly SizeNode[], grid: SizeGrid): Place {
  const best = nodes.reduce((a, b) => (b.weight > a.weight ? b : a));
  const amount = cause.kind === "ratio" ? Math.log(best.size) : best.size;
  const sign = amount < 0 ? -1 : 1;
  const part = grid.parts.get(cause)!.find((p) => p.sign === sign && p.shape === best.shape)!;
  return { part, t: Math.min(part.high, Math.max(part.low, Math.log(Math.abs(amount)))) };
}
