/**
 * How much the first finding rests on one belief: its chance with that belief's spread halved and doubled.
 *
 * Equation    p' = p e^D/(p e^D + 1 - p),  D = change of ln(evidence of the finding at its size / evidence of healthy)
 *             to first order D = +-ln 2 sum_c (E[beta_c^2 | finding] - E[beta_c^2 | healthy]) over the belief's columns;
 *             where that is no small matter (|D| > 0.4), for the few beliefs that matter most, both evidences are computed anew
 * Assumes     the other explanations keep their place against healthy
 */
import { logEvidence, meanSquares, type Prepared, prepare, type TallyModel } from "../tally/index.ts";
import { evidenceOf, shiftFor } from "./evidence-of.ts";
import { ownPrediction } from "./own-prediction.ts";
import type { WeighedCause } from "./weigh-all.ts";

export type Sensitivity = { readonly unknown: string; readonly halved: number; readonly doubled: number };

/** change of ln(evidence) that first order may stand for */
const SMALL = 0.4;
/** beliefs computed anew at most */
const EXACT = 4;

export function sensitivities(first: WeighedCause, prepared: Prepared): Sensitivity[] {
  const prediction = ownPrediction(first, prepared);
  const healthySquares = meanSquares(prepared, null);
  const own = prediction.response === null ? prepared : prepare(prepared.model, prediction.response);
  const ownSquares = meanSquares(own, shiftFor(prediction, prepared));
  const factor = (model: TallyModel) => {
    const healthy = prepare(model, null);
    return evidenceOf(prediction, healthy) - logEvidence(healthy, null);
  };
  const base = factor(prepared.model);
  const chance = (change: number) => {
    const odds = (first.probability / Math.max(1 - first.probability, 1e-12)) * Math.exp(change);
    return odds / (1 + odds);
  };
  const slopes = prepared.model.unknowns.map((unknown) => {
    let slope = 0;
    for (let c = unknown.from; c < unknown.from + unknown.columns; c++) slope += ownSquares[c]! - healthySquares[c]!;
    return { unknown, slope };
  });
  const strongest = slopes.map(({ slope }) => Math.abs(slope)).sort((a, b) => b - a)[EXACT - 1] ?? 0;
  return slopes.map(({ unknown, slope }) => {
    const change = (by: number) => {
      const first = slope * Math.log(by);
      const small = Math.abs(first) < SMALL || Math.abs(slope) < strongest;
      return small ? first : factor(scaled(prepared.model, unknown, by)) - base;
    };
    return { unknown: unknown.name, halved: chance(change(0.5)), doubled: chance(change(2)) };
  });
}

function scaled(model: TallyModel, unknown: TallyModel["unknowns"][number], by: number): TallyModel {
  const basis = model.basis.slice();
  for (let at = unknown.from; at < basis.length; at += model.columns) {
    for (let c = 0; c < unknown.columns; c++) basis[at + c] = basis[at + c]! * by;
  }
  const standing = model.standing.map((s) => {
    const own = s.basis.slice();
    for (let c = 0; c < unknown.columns; c++) own[unknown.from + c] = own[unknown.from + c]! * by;
    return { ...s, basis: own };
  });
  return { ...model, basis, standing };
}
