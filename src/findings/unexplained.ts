/**
 * Something that is not in the catalogue: a witness departs, smoothly over speed and pressure, in a way no cause describes.
 *
 * Equation    the healthy model with one more smooth function g on one witness, of amplitude 0.12; the evidence is the mean over
 *             the witnesses;  where: E[g], sd[g] at every point for the witness whose evidence is greatest
 * Why         a shape that fits no cause must not be given to the least bad one
 */
import { choleskyInverse } from "../numerics/index.ts";
import {
  logEvidence,
  type Prepared,
  posterior,
  prepare,
  smoothFunction,
  type TallyModel,
  type TallyWitness,
} from "../tally/index.ts";
import { logSum } from "./log-sum.ts";

const AMPLITUDE = 0.12;
const LENGTH = 0.7;

/** How one witness departs by itself, ln units, one entry a point. */
export type Stray = { readonly witness: TallyWitness; readonly mean: Float64Array; readonly sd: Float64Array };

/** ln evidence, against healthy. */
export function weighUnexplained(healthy: Prepared): number {
  const { model } = healthy;
  if (model.witnesses.length < 2) return 0;
  const values = model.witnesses.map((_, j) => logEvidence(prepare(withStray(model, j), null), null));
  return logSum(values) - Math.log(values.length) - logEvidence(healthy, null);
}

/** Null where one witness is all there is. */
export function strayOf({ model }: Prepared): Stray | null {
  if (model.witnesses.length < 2) return null;
  const candidates = model.witnesses.map((witness, j) => {
    const prepared = prepare(withStray(model, j), null);
    return { witness, j, prepared, value: logEvidence(prepared, null) };
  });
  const { witness, j, prepared } = candidates.reduce((a, b) => (b.value > a.value ? b : a));
  const { columns, basis } = prepared.model;
  const { beta } = posterior(prepared, null);
  const covariance = choleskyInverse(prepared.factor, columns);
  const mean = new Float64Array(model.points.length);
  const sd = new Float64Array(model.points.length);
  for (let i = 0; i < mean.length; i++) {
    const row = basis.subarray(
      (i * model.witnesses.length + j) * columns,
      (i * model.witnesses.length + j + 1) * columns,
    );
    let variance = 0;
    for (let a = model.columns; a < columns; a++) {
      mean[i] = mean[i]! + row[a]! * beta[a]!;
      for (let b = model.columns; b < columns; b++) variance += row[a]! * row[b]! * covariance[a * columns + b]!;
    }
    sd[i] = Math.sqrt(Math.max(0, variance));
  }
  return { witness, mean, sd };
}

function withStray(model: TallyModel, witness: number): TallyModel {
  const w = model.witnesses.length;
  const spans = [spanOf(model.physics.speed), spanOf(model.physics.pressure)];
  const f = smoothFunction({ amplitude: AMPLITUDE, lengths: [LENGTH, LENGTH], spans });
  const columns = model.columns + f.columns;
  const basis = new Float64Array(model.points.length * w * columns);
  for (let row = 0; row < model.points.length * w; row++) {
    basis.set(model.basis.subarray(row * model.columns, (row + 1) * model.columns), row * columns);
    if (row % w !== witness) continue;
    const i = Math.floor(row / w);
    const at = [Math.log(model.physics.speed[i]!), Math.log(model.physics.pressure[i]!)];
    f.row(at, basis, row * columns + model.columns, 1);
  }
  const longer = (x: Float64Array) => {
    const out = new Float64Array(columns);
    out.set(x);
    return out;
  };
  return {
    ...model,
    columns,
    basis,
    moving: model.moving.map((own, j) =>
      j === witness
        ? Int32Array.from([...own, ...Array.from({ length: f.columns }, (_, c) => model.columns + c)])
        : own,
    ),
    nonNegative: model.nonNegative.map(longer),
    standing: model.standing.map((s) => ({ ...s, basis: longer(s.basis) })),
  };
}

function spanOf(values: Float64Array): readonly [number, number] {
  const logs = [...values].filter((v) => v > 0).map(Math.log);
  return logs.length === 0 ? [0, 1] : [Math.min(...logs), Math.max(...logs)];
}
