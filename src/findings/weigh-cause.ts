/**
 * Evidence of one cause, with its size and form integrated over their priors, and what follows for its size.
 *
 * Equation    Z = sum_sides share sum_shapes weight  1/(t_1 - t_0) integral exp(ln evidence(size(t), shape)) dt
 * Source      sum and product rules; quadrature numerics/adaptive-quadrature
 */
import { type Density, densityNodes, integrateExponential } from "../numerics/index.ts";
import { logEvidence, type Prepared, prepare, type Shift } from "../tally/index.ts";
import type { Cause } from "./catalogue.ts";
import type { Prediction } from "./cause.ts";
import { sidesOf, sizeAt } from "./size-scale.ts";

/** A size that the cause may have, with its share of the cause's posterior. */
export type SizeNode = { readonly size: number; readonly shape: number; readonly weight: number };

export type CauseWeight = {
  readonly cause: Cause;
  /** ln of the integrated evidence */
  readonly logEvidence: number;
  /** posterior of the size given this cause: ascending sizes, weights sum to one */
  readonly nodes: readonly SizeNode[];
  /** ln evidence along the size, all shapes weighed together: for what can be excluded */
  readonly profile: readonly { readonly size: number; readonly logEvidence: number }[];
};

export function weighCause(cause: Cause, healthy: Prepared): CauseWeight {
  const { model } = healthy;
  const parts: { logWeight: number; density: Density; sign: 1 | -1; shape: number }[] = [];
  for (const side of sidesOf(cause)) {
    for (const shape of cause.law.shapes(model)) {
      const at = (t: number) => evidenceOf(cause.law.predict(model, sizeAt(cause, side.sign, t), shape.value), healthy);
      const density = integrateExponential(at, side.low, side.high, 7, 0.03);
      const logWeight = Math.log(side.share * shape.weight) - Math.log(side.high - side.low) + density.logIntegral;
      parts.push({ logWeight, density, sign: side.sign, shape: shape.value });
    }
  }
  const total = logSum(parts.map((p) => p.logWeight));
  const nodes = parts
    .flatMap((part) =>
      densityNodes(part.density).map((node) => ({
        size: sizeAt(cause, part.sign, node.x),
        shape: part.shape,
        weight: node.weight * Math.exp(part.logWeight - total),
      })),
    )
    .filter((node) => node.weight > 1e-7)
    .sort((a, b) => a.size - b.size);
  return { cause, logEvidence: total, nodes, profile: profileOf(cause, parts, model) };
}

/** The evidence of a prediction: its shift, and where the response to air changes the elimination with it. */
export function evidenceOf(prediction: Prediction, healthy: Prepared): number {
  if (prediction.response === null) return logEvidence(healthy, shiftFor(prediction, healthy));
  return logEvidence(prepare(healthy.model, prediction.response), shiftFor(prediction, healthy));
}

/** ln M = effect + ln m_0 + a (u - ln m_0): what is left beside a u is the shift. */
export function shiftFor(prediction: Prediction, healthy: Prepared): Shift {
  const { effect, response, logAir, standing } = prediction;
  if (response === null || logAir === null) return { witnesses: effect, standing };
  const w = healthy.model.witnesses.length;
  const witnesses = effect.map((value, row) => value + (1 - response[row]!) * logAir[Math.floor(row / w)]!);
  return { witnesses, standing };
}

export function logSum(values: readonly number[]): number {
  const largest = Math.max(...values);
  if (largest === -Infinity) return -Infinity;
  return largest + Math.log(values.reduce((sum, v) => sum + Math.exp(v - largest), 0));
}

/** Quantile of the size among nodes, each node standing for the stretch half-way to its neighbours. */
export function sizeQuantile(nodes: readonly SizeNode[], p: number): number {
  let below = 0;
  for (let i = 0; i < nodes.length; i++) {
    const { size, weight } = nodes[i]!;
    if (below + weight >= p || i === nodes.length - 1) {
      const left = i > 0 ? (nodes[i - 1]!.size + size) / 2 : size;
      const right = i + 1 < nodes.length ? (size + nodes[i + 1]!.size) / 2 : size;
      const part = weight > 0 ? Math.min(1, Math.max(0, (p - below) / weight)) : 0.5;
      return left + (right - left) * part;
    }
    below += weight;
  }
  return Number.NaN;
}

/** ln evidence along the size on the union of the samples, the shapes weighed by their prior. */
function profileOf(
  cause: Cause,
  parts: readonly { density: Density; sign: 1 | -1; shape: number }[],
  model: Prepared["model"],
): { size: number; logEvidence: number }[] {
  const shapes = new Map(cause.law.shapes(model).map((s) => [s.value, s.weight]));
  const out: { size: number; logEvidence: number }[] = [];
  for (const sign of [-1, 1] as const) {
    const own = parts.filter((p) => p.sign === sign);
    const grid = [...new Set(own.flatMap((p) => p.density.x))].sort((a, b) => a - b);
    for (const t of grid) {
      const value = logSum(own.map((p) => Math.log(shapes.get(p.shape)!) + interpolate(p.density, t)));
      out.push({ size: sizeAt(cause, sign, t), logEvidence: value });
    }
  }
  return out.sort((a, b) => a.size - b.size);
}

function interpolate({ x, logValue }: Density, t: number): number {
  let i = 0;
  while (i + 2 < x.length && x[i + 1]! < t) i++;
  const part = (t - x[i]!) / (x[i + 1]! - x[i]!);
  return logValue[i]! + (logValue[i + 1]! - logValue[i]!) * part;
}
