/** docs/accuracy.md from everything judged: one folder a set of cases and factor on the spreads, "tuning-1", "final-1", "tuning-2". */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { JudgedCase, Witting } from "./judge-case.ts";
import { causeTable, type Judged, reliabilityTable, wholeTable } from "./table.ts";

type Line = JudgedCase & { readonly knows: Witting };
type Refused = { readonly ok: false; readonly number: number; readonly reason: string };

type Gathered = Omit<Judged, "title"> & { readonly tooSmall: number; readonly refused: number };

export function accuracyDocument(folder: string): string {
  const read = (name: string) => gather(join(folder, `judged-${name}`));
  const [tuning, final] = [read("tuning-1"), read("final-1")];
  const parts = [HEAD];
  if (tuning !== null) parts.push(section("## Engines, weather and drivers that the beliefs were tuned on", tuning));
  if (final !== null) parts.push(section("## Withheld: the long manifold, three cylinders, the hurried driver", final));
  const others: Judged[] = [
    { title: "beliefs as they are", ...tuning },
    { title: "spreads of healthy engines halved", ...read("tuning-0.5") },
    { title: "spreads doubled", ...read("tuning-2") },
  ].flatMap((one) => (one.cases === undefined ? [] : [one as Judged]));
  if (others.length > 1) parts.push(`## With other beliefs\n\n${wholeTable(others)}`);
  if (tuning !== null) parts.push(prevalence(tuning.cases));
  return `${parts.join("\n\n")}\n`;
}

function gather(folder: string): Gathered | null {
  if (!existsSync(folder)) return null;
  const lines = readdirSync(folder)
    .filter((name) => name.startsWith("part-"))
    .flatMap((name) => readFileSync(join(folder, name), "utf8").trimEnd().split("\n"))
    .map((line) => JSON.parse(line) as Line | Refused);
  const judged = lines.filter((l): l is Line => !("ok" in l));
  const plain = judged.filter((l) => l.knows === "as it is");
  const worth = judged.filter((l) => !l.tooSmall);
  return {
    cases: worth.filter((l) => l.knows === "as it is"),
    oracle: worth.filter((l) => l.knows === "oracle"),
    tooSmall: plain.filter((l) => l.tooSmall).length,
    refused: lines.length - judged.length,
  };
}

function section(title: string, { cases, oracle, tooSmall, refused }: Gathered): string {
  const families = [...new Set(cases.map((c) => c.family))].sort();
  const of = (family: string): Judged => ({
    title: family,
    cases: cases.filter((c) => c.family === family),
    oracle: oracle.filter((c) => c.family === family),
  });
  return [
    title,
    `${cases.length} cases; ${tooSmall} more with a planted fault smaller than what is worth mending are left out, ${refused} could not be read.`,
    wholeTable([{ title: "all", cases, oracle }, ...families.map(of)]),
    "What was said with which chance, and how much of it was so (healthy and every cause):",
    reliabilityTable(cases),
    "By cause, where it was the only one planted (sizes also where it was one of two):",
    causeTable(cases, oracle),
  ].join("\n\n");
}

/** The same cases in other mixes: of the kind there are too many of, the later ones are left out. */
function prevalence(cases: readonly JudgedCase[]): string {
  const healthy = cases.filter((c) => c.faults.length === 0);
  const faulty = cases.filter((c) => c.faults.length > 0);
  const tables = [0.05, 0.3, 0.6].map((share) => {
    const most = Math.min(healthy.length / share, faulty.length / (1 - share));
    const mix = [...healthy.slice(0, Math.round(share * most)), ...faulty.slice(0, Math.round((1 - share) * most))];
    return `${100 * share} % healthy:\n\n${reliabilityTable(mix)}`;
  });
  return ["## With another share of healthy engines", ...tables].join("\n\n");
}

const HEAD = `# How good the answers are

Printed by \`npm run evaluate\` on invented engines alone (test/cases, parameters frozen before anything was tuned on them); how good
they are on real ones is not yet known: no real petrol recording with meter and trims is in hand. A cause counts as *said* where it
has more than half; a *group* is right where the leading cause, or one that the recording can't tell from it, was planted. A *false
alarm* is a cause said of a healthy engine. The *oracle* is the same inference told what this very engine is when healthy (curve,
breathing, constants, from another run of it); it was asked for one case in four. Shares stand with their exact 95 % interval and n.
*Found in 80 % from*: the smallest size, in the cause's unit (ratios: distance from one), from which four in five were found.`;
