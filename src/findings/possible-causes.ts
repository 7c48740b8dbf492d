/**
 * The causes that this engine can have, each with its share of the prior; where an engine has two banks, a fault that one bank
 * can have alone stands three times: both banks, bank 1, bank 2.
 *
 * Rule    of one bank: the shift of the other bank's witnesses is zero; an amount that all goes to one bank weighs twice on
 *         half the air
 */
import type { TallyModel, TallyWitness } from "../tally/index.ts";
import { CATALOGUE, type Cause } from "./catalogue.ts";
import type { Law, Prediction } from "./cause.ts";

export function possibleCauses(model: TallyModel): Cause[] {
  return CATALOGUE.filter((cause) => cause.law.applies(model)).flatMap((cause) => {
    const { perBank } = cause;
    if (perBank === undefined || model.engine.banks !== 2 || !touchesOneBank(cause, model)) return [cause];
    const alone = (1 - perBank.common) / 2;
    return [
      { ...cause, weight: cause.weight * perBank.common },
      { ...cause, weight: cause.weight * alone, bank: 1, law: ofBank(cause.law, 1, perBank.size) },
      { ...cause, weight: cause.weight * alone, bank: 2, law: ofBank(cause.law, 2, perBank.size) },
    ];
  });
}

/** A single meter for both banks can't be wrong for one of them. */
function touchesOneBank(cause: Cause, model: TallyModel): boolean {
  return cause.station !== "meter" || model.engine.meters.some((meter) => meter.bank !== null);
}

function ofBank(law: Law, bank: 1 | 2, size: "ratio" | "amount"): Law {
  const factor = size === "amount" ? 2 : 1;
  return {
    ...law,
    predict: (model, amount, shape) => onlyBank(law.predict(model, factor * amount, shape), model, bank),
  };
}

function onlyBank(prediction: Prediction, model: TallyModel, bank: 1 | 2): Prediction {
  const w = model.witnesses.length;
  const silent = model.witnesses.map((id) => (bankOf(id, model) ?? bank) !== bank);
  return {
    ...prediction,
    effect: prediction.effect.map((value, row) => (silent[row % w] ? 0 : value)),
    response: prediction.response?.map((value, row) => (silent[row % w] ? 1 : value)) ?? null,
  };
}

function bankOf(id: TallyWitness, model: TallyModel): 1 | 2 | null {
  if (id === "fuel-bank1") return 1;
  if (id === "fuel-bank2") return 2;
  return model.engine.meters.find((meter) => meter.id === id)?.bank ?? null;
}
