/** The exact evidence of a prediction, of one cause or of several together. */
import {
  type EvidenceParts,
  evidenceParts,
  narrowRecirculation,
  type Prepared,
  prepare,
  type Shift,
} from "../tally/index.ts";
import type { Prediction } from "./cause.ts";

export function evidenceOf(prediction: Prediction, healthy: Prepared): number {
  const { normaliser, fit, signs } = partsOf(prediction, healthy);
  return normaliser + fit + signs;
}

/** Its shift, and where the response to air changes the elimination with it. Recirculation that narrows is no shift but a belief. */
export function partsOf(prediction: Prediction, healthy: Prepared): EvidenceParts {
  const { recirculation, standing } = prediction;
  if (recirculation !== undefined) {
    const narrowed = prepare(narrowRecirculation(healthy.model, recirculation), prediction.response);
    return evidenceParts(narrowed, { witnesses: new Float64Array(prediction.effect.length), standing });
  }
  const prepared = prediction.response === null ? healthy : prepare(healthy.model, prediction.response);
  return evidenceParts(prepared, shiftFor(prediction, healthy));
}

/** ln M = effect + ln m_0 + a (u - ln m_0): what is left beside a u is the shift. */
export function shiftFor(prediction: Prediction, healthy: Prepared): Shift {
  const { effect, response, logAir, standing } = prediction;
  if (response === null || logAir === null) return { witnesses: effect, standing };
  const w = healthy.model.witnesses.length;
  const witnesses = effect.map((value, row) => value + (1 - response[row]!) * logAir[Math.floor(row / w)]!);
  return { witnesses, standing };
}

/**
 * Two causes at once: shifts add, and so do departures of the response from one (to first order). The air about which the
 * response holds is the reading less the whole shift.
 */
export function together(one: Prediction, other: Prediction, witnesses: number): Prediction {
  const effect = one.effect.map((value, row) => value + other.effect[row]!);
  const standing = one.standing.map((value, s) => value + (other.standing[s] ?? 0));
  if (one.response === null && other.response === null) return { effect, response: null, logAir: null, standing };
  const response = effect.map((_, row) => (one.response?.[row] ?? 1) + (other.response?.[row] ?? 1) - 1);
  const logAir = new Float64Array(effect.length / witnesses);
  for (let k = 0; k < logAir.length; k++) {
    const [own, added] = one.response !== null ? [one, other] : [other, one];
    const row = rowThatFollows(own, k, witnesses);
    logAir[k] = (own.logAir?.[k] ?? 0) - (row === null ? 0 : added.effect[row]!);
  }
  return { effect, response, logAir, standing };
}

function rowThatFollows({ response }: Prediction, k: number, witnesses: number): number | null {
  for (let j = 0; j < witnesses; j++) if (response?.[k * witnesses + j] !== 1) return k * witnesses + j;
  return null;
}
