/** What can be simulated: families, protocols, faults with the meaning of their size, recorders. Read from the model engine's tables. */
import { FAMILIES, FAMILY_DESIGNS, FAULT_LIMITS, PLANTABLE, type PlantableCause } from "../../model-engine/index.ts";
import { FAULT_WORDS } from "./fault-table.ts";
import { lengthsOf, PROTOCOL_NAMES, PROTOCOLS } from "./protocols.ts";
import { RECORDER_NAMES, RECORDERS } from "./read-recorder.ts";
import { INVENTED } from "./simulate.ts";
import { SIMULATE_DEFAULTS } from "./simulate-options.ts";
import type { SimulateChoices } from "./simulate-schema.ts";

export function simulateChoices(toolVersion: string): SimulateChoices {
  const { largestSpeed } = FAMILY_DESIGNS[SIMULATE_DEFAULTS.family];
  return {
    format: "airtally-simulate/1",
    toolVersion,
    notice: `${INVENTED}.`,
    kind: "choices",
    families: FAMILIES.map((family) => {
      const { note, computer, meter } = FAMILY_DESIGNS[family];
      return { family, engine: note, dosedBy: computer.dosedBy, meter: meter?.kind ?? null };
    }),
    protocols: PROTOCOL_NAMES.map((protocol) => {
      const { least, usual } = lengthsOf(protocol, largestSpeed);
      return { protocol, does: PROTOCOLS[protocol].does, least_s: least, usual_s: usual };
    }),
    faults: (Object.keys(PLANTABLE) as PlantableCause[]).map((cause) => {
      const { is, size, needs, example } = FAULT_WORDS[cause];
      const [low, high] = FAULT_LIMITS[cause];
      return { cause, is, sizeMeans: size, unit: PLANTABLE[cause], low, high, needs, example };
    }),
    recorders: RECORDER_NAMES.map((recorder) => ({ recorder, does: RECORDERS[recorder] })),
  };
}
