/**
 * Judges invented cases and prints the figures. Started by scripts/evaluate.mjs, once for each part of the cases and once, with
 * --print, to gather. What was observed is kept (kept-cases.ts); what the inference says of it is made anew each time.
 *
 *   --observed FOLDER --judged FOLDER --set tuning|final --cases N --part I/N [--spreads 0.5|1|2] [--print]
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { ASSUMPTION_TABLE, type Assumptions, defaultAssumptions } from "../../src/tally/index.ts";
import type { CaseSet } from "../cases/draw-case.ts";
import { type JudgedCase, judge, type Witting } from "./judge-case.ts";
import { BLOCK, block } from "./kept-cases.ts";
import { causeTable, reliabilityTable, wholeTable } from "./table.ts";

const { values } = parseArgs({
  options: {
    observed: { type: "string", default: "" },
    judged: { type: "string", default: "" },
    set: { type: "string", default: "tuning" },
    cases: { type: "string", default: "5000" },
    part: { type: "string", default: "0/1" },
    spreads: { type: "string", default: "1" },
    print: { type: "boolean", default: false },
  },
});

type Line = JudgedCase & { readonly knows: Witting; readonly variant: string };

if (values.print) print(values.judged);
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

function print(folder: string): void {
  const lines = readdirSync(folder)
    .filter((name) => name.startsWith("part-"))
    .flatMap((name) => readFileSync(join(folder, name), "utf8").trimEnd().split("\n"))
    .map((line) => JSON.parse(line) as Line | { readonly ok: false; readonly number: number; readonly reason: string });
  const refused = lines.filter((l) => "ok" in l);
  const judged = lines.filter((l): l is Line => !("ok" in l));
  const worth = judged.filter((l) => !l.tooSmall);
  const cases = worth.filter((l) => l.knows === "as it is");
  const oracle = worth.filter((l) => l.knows === "oracle");
  const families = [...new Set(cases.map((c) => c.family))].sort();
  const of = (family: string) => ({
    title: family,
    cases: cases.filter((c) => c.family === family),
    oracle: oracle.filter((c) => c.family === family),
  });
  process.stdout.write(
    [
      wholeTable([{ title: "all", cases, oracle }, ...families.map(of)]),
      reliabilityTable(cases),
      causeTable(cases, oracle),
      `Left out, a planted fault being smaller than what is worth mending: ${judged.filter((l) => l.tooSmall && l.knows === "as it is").length}. Not read: ${refused.length}.`,
      "",
    ].join("\n\n"),
  );
}
