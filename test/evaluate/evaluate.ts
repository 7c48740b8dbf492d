/**
 * Judges invented cases and gathers the figures. Started by scripts/evaluate.mjs, once for each part of the cases and once, with
 * --document, to gather everything judged. What was observed is kept (kept-cases.ts); what the inference says of it is made anew.
 *
 *   --observed FOLDER --judged FOLDER --set tuning|final --cases N --part I/N [--spreads 0.5|1|2]
 *   --judged FOLDER --document
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { ASSUMPTION_TABLE, type Assumptions, defaultAssumptions } from "../../src/tally/index.ts";
import type { CaseSet } from "../cases/draw-case.ts";
import { accuracyDocument } from "./accuracy-document.ts";
import { judge, type Witting } from "./judge-case.ts";
import { BLOCK, block } from "./kept-cases.ts";

const { values } = parseArgs({
  options: {
    observed: { type: "string", default: "" },
    judged: { type: "string", default: "" },
    set: { type: "string", default: "tuning" },
    cases: { type: "string", default: "5000" },
    part: { type: "string", default: "0/1" },
    spreads: { type: "string", default: "1" },
    document: { type: "boolean", default: false },
  },
});

if (values.document) process.stdout.write(accuracyDocument(values.judged));
else judgePart();

function judgePart(): void {
  const [index, parts] = values.part.split("/").map(Number) as [number, number];
  const assumptions = spread(Number(values.spreads));
  const lines: string[] = [];
  for (let b = index; b * BLOCK < Number(values.cases); b += parts) {
    for (const observation of block(values.observed, values.set as CaseSet, b)) {
      if (!observation.ok) {
        lines.push(JSON.stringify(observation));
        continue;
      }
      const one = observation.value;
      const knowing: Witting[] = one.twin === null || values.spreads !== "1" ? ["as it is"] : ["as it is", "oracle"];
      for (const knows of knowing)
        lines.push(JSON.stringify({ ...judge(one, assumptions, knows), knows, variant: one.variant }));
    }
    process.stderr.write(`${values.set}, part ${index}: ${Math.min((b + 1) * BLOCK, Number(values.cases))} cases\n`);
  }
  mkdirSync(values.judged, { recursive: true });
  writeFileSync(join(values.judged, `part-${index}.ndjson`), `${lines.join("\n")}\n`);
}

/** The spreads of healthy engines (not means, lengths or noise) wider or narrower. */
function spread(factor: number): Assumptions {
  const changed = ASSUMPTION_TABLE.filter((row) => row.reason.startsWith("sd of"));
  return {
    ...defaultAssumptions(),
    ...Object.fromEntries(changed.map((row) => [row.key, row.value * factor])),
  };
}
