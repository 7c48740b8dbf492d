/**
 * Whether what was recorded looks like anything that an explanation would bring: too much scatter means that noise or healthy
 * spreads are understated, whatever the explanations' odds.
 *
 * Equation    X2 = -2 fit = e'P~ e ~ chi-square with n degrees of freedom,  n = sum over points (witnesses - 1) + standing rows
 * Symbols     e what was recorded less the shift | P~ precision with air and all unknowns integrated out
 * Assumes     the size is held at its best; a few degrees of freedom spent on it are left uncounted, which is cautious
 * Source      prior predictive check [gelman2013] ch. 6
 */
import { chiSquareUpper } from "../numerics/index.ts";
import type { Prepared } from "../tally/index.ts";
import type { Prediction } from "./cause.ts";
import { partsOf } from "./evidence-of.ts";

export type Misfit = { readonly statistic: number; readonly degrees: number; readonly probability: number };

export function misfit(prediction: Prediction, healthy: Prepared): Misfit {
  const { model } = healthy;
  const w = model.witnesses.length;
  let degrees = model.standing.length;
  for (let i = 0; i < model.points.length; i++) {
    let present = 0;
    for (let j = 0; j < w; j++) present += model.present[i * w + j]!;
    degrees += Math.max(0, present - 1);
  }
  const statistic = Math.max(0, -2 * partsOf(prediction, healthy).fit);
  return { statistic, degrees, probability: degrees === 0 ? 1 : chiSquareUpper(statistic, degrees) };
}
