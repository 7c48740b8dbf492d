/** Faults as written in a call to faults of this engine: each cause once (or once a bank), and only where the engine has the part. */
import { type EngineDesign, type Fault, type FaultReason, parseFault } from "../../model-engine/index.ts";
import { failure, type Result, success } from "../../quantities/index.ts";
import { FAULT_WORDS, type NeededPart } from "./fault-table.ts";

export type FaultsReason = FaultReason | "fault-repeated" | "fault-misplaced";

export function readFaults(texts: readonly string[], design: EngineDesign): Result<readonly Fault[], FaultsReason> {
  const faults: Fault[] = [];
  for (const text of texts) {
    const fault = parseFault(text);
    if (!fault.ok) return fault;
    const { cause, bank } = fault.value;
    const otherBank = (other: Fault) => bank !== undefined && other.bank !== undefined && other.bank !== bank;
    if (faults.some((other) => other.cause === cause && !otherBank(other)))
      return failure(
        "fault-repeated",
        `The fault ${cause} is named twice.`,
        "Give each cause once, with its whole size.",
      );
    if (bank !== undefined && design.banks !== 2)
      return failure(
        "fault-misplaced",
        `The ${design.note} has one bank of cylinders: ${cause} can't be of bank ${bank}.`,
        `Leave "bank ${bank}" out.`,
      );
    const { needs } = FAULT_WORDS[cause];
    if (needs !== null && !HAS[needs](design))
      return failure(
        "fault-misplaced",
        `The fault ${cause} needs ${/^[aeiou]/i.test(needs) ? "an" : "a"} ${needs}, and the ${design.note} has none.`,
        "Take another family, or another fault (--list names both).",
      );
    faults.push(fault.value);
  }
  return success(faults);
}

const HAS: { readonly [part in NeededPart]: (design: EngineDesign) => boolean } = {
  meter: ({ meter }) => meter !== null,
  "heated meter": ({ meter }) => meter?.kind === "hot-wire" || meter?.kind === "hot-film",
  "vane meter": ({ meter }) => meter?.kind === "vane",
  compressor: ({ charger }) => charger !== null,
  "EGR valve": ({ egrValveArea }) => egrValveArea !== null,
  "manifold pressure sensor": ({ manifoldSensor }) => manifoldSensor !== null,
  "lambda probe": ({ lambdaProbe }) => lambdaProbe !== "none",
};
