/**
 * Evidence of one cause alone, with its size and form integrated over their priors, and what follows for its size.
 *
 * Equation    Z = sum_sides share sum_shapes weight  integral p(t) exp(R(t) + ln known(t)) dt,  R against healthy
 * Source      sum and product rules; quadrature numerics/adaptive-quadrature, R from size-grid.ts
 */
import { type Density, densityNodes, integrateExponential } from "../numerics/index.ts";
import type { Cause } from "./catalogue.ts";
import type { Known } from "./known.ts";
import { LAGRANGE_POINTS } from "./lagrange.ts";
import { logSum } from "./log-sum.ts";
import { logRatioAt, placeIn, type SizePart } from "./size-grid.ts";
import type { SizeNode } from "./size-nodes.ts";
import { logSizePrior, sizeAt } from "./size-scale.ts";

/** samples to start with, and how much of the whole any piece may be wrong by */
export const QUADRATURE = { samples: 7, tolerance: 0.03 } as const;

export type CauseWeight = {
  readonly cause: Cause;
  /** ln of the integrated evidence, against healthy */
  readonly logRatio: number;
  /** posterior of the size given this cause alone: ascending sizes, weights sum to one */
  readonly nodes: readonly SizeNode[];
  /** ln evidence along the size against healthy, all shapes weighed together, workshop checks left aside: for what can be excluded */
  readonly profile: readonly { readonly size: number; readonly logRatio: number }[];
};

type Weighed = { readonly part: SizePart; readonly density: Density; readonly logWeight: number };

export function weighCause(cause: Cause, parts: readonly SizePart[], known: Known): CauseWeight {
  const weights = new Float64Array(LAGRANGE_POINTS);
  const weighed: Weighed[] = parts.map((part) => {
    const at = (t: number) =>
      logRatioAt(part, placeIn(part, t, weights), weights) +
      logSizePrior(part, t) +
      known([{ cause: cause.id, bank: cause.bank, size: sizeAt(cause, part.sign, t) }]);
    const density = integrateExponential(at, part.low, part.high, QUADRATURE.samples, QUADRATURE.tolerance);
    return { part, density, logWeight: part.logWeight + density.logIntegral };
  });
  const total = logSum(weighed.map((p) => p.logWeight));
  const nodes = weighed
    .flatMap(({ part, density, logWeight }) =>
      densityNodes(density).map((node) => ({
        size: sizeAt(cause, part.sign, node.x),
        shape: part.shape,
        weight: node.weight * Math.exp(logWeight - total),
      })),
    )
    .filter((node) => node.weight > 1e-7)
    .sort((a, b) => a.size - b.size);
  return { cause, logRatio: total, nodes, profile: profileOf(cause, weighed) };
}

/** ln evidence along the size on the union of the samples, the shapes weighed by their prior. */
function profileOf(cause: Cause, weighed: readonly Weighed[]): { size: number; logRatio: number }[] {
  const weights = new Float64Array(LAGRANGE_POINTS);
  const out: { size: number; logRatio: number }[] = [];
  for (const sign of [-1, 1] as const) {
    const own = weighed.filter((w) => w.part.sign === sign);
    const share = logSum(own.map((w) => w.part.logWeight));
    const grid = [...new Set(own.flatMap((w) => w.density.x))].sort((a, b) => a - b);
    for (const t of grid) {
      const value = logSum(
        own.map(({ part }) => part.logWeight - share + logRatioAt(part, placeIn(part, t, weights), weights)),
      );
      out.push({ size: sizeAt(cause, sign, t), logRatio: value });
    }
  }
  return out.sort((a, b) => a.size - b.size);
}
