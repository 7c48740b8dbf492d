/** How far each witness departs from the common answer at each point, with the uncertainty of that. */
import type { TallyModel, TallyWitness } from "../../tally/index.ts";
import type { CommonAnswer } from "./air.ts";

export type Departure = { readonly value: number; readonly sd: number };

/** Departure of witness j at point i; null where it was not recorded there. */
export function departureAt(model: TallyModel, answer: CommonAnswer, i: number, j: number): Departure | null {
  const w = model.witnesses.length;
  const row = i * w + j;
  if (model.present[row] === 0 || Number.isNaN(answer.logAir[i]!)) return null;
  const own = model.errors[(i * w + j) * w + j]! + model.discrepancy[j]!;
  return { value: model.y[row]! - believedCorrection(model, answer, row, j) - answer.logAir[i]!, sd: Math.sqrt(own) };
}

/** kg/s that the witness says: the meter as read; pressure and what is dosed by it with this engine's reconciled breathing. */
export function wordOf(model: TallyModel, answer: CommonAnswer, i: number, j: number): number {
  const row = i * model.witnesses.length + j;
  return Math.exp(model.y[row]! - believedCorrection(model, answer, row, j));
}

function believedCorrection(model: TallyModel, answer: CommonAnswer, row: number, j: number): number {
  return isReconciled(model, model.witnesses[j]!) ? answer.correction[row]! : 0;
}

/**
 * Breathing and the throttle's own area are nobody's reading: they are learnt from the tally. A meter's or the fuel side's own
 * tolerance is left to be seen.
 */
function isReconciled(model: TallyModel, witness: TallyWitness): boolean {
  return (
    model.witnesses.length > 1 &&
    (witness === "pressure" ||
      witness === "throttle" ||
      (model.engine.metering === "pressure" && witness.startsWith("fuel")))
  );
}

/** Mean of several departures weighed by their variance; null for none. */
export function meanDeparture(parts: readonly (Departure | null)[], shared: number): Departure | null {
  let weight = 0;
  let sum = 0;
  for (const part of parts) {
    if (part === null) continue;
    weight += 1 / part.sd ** 2;
    sum += part.value / part.sd ** 2;
  }
  // What a region shares does not average away.
  return weight === 0 ? null : { value: sum / weight, sd: Math.sqrt(1 / weight + shared) };
}
