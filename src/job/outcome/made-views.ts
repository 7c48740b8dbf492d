/** The workshop checks entered, each with what it says of the answer that leads. */
import { type FoundResult, spokenFor, type Weighed } from "../../findings/index.ts";
import type { View } from "../result.ts";
import { tellFound } from "./tell-found.ts";
import { figure } from "./words.ts";

/** odds nearer to even than this say little */
const LITTLE = 1.5;

export function madeViews(weighed: Weighed, found: readonly FoundResult[]): View["made"] {
  const first = weighed.causes[0];
  const leads = first === undefined || weighed.healthy.probability >= first.probability ? null : first;
  const name = leads === null ? "a healthy air signal" : `“${leads.cause.title}”`;
  const spoken = spokenFor(leads?.cause.id ?? null, weighed, found);
  return found.map((result) => {
    const { title, shown } = tellFound(result);
    const { ratio } = spoken.find((s) => s.result === result)!;
    return { check: result.check, title, bank: result.bank, result: shown, says: saysOf(ratio, name) };
  });
}

function saysOf(ratio: number, name: string): string {
  if (ratio >= LITTLE) return `Speaks for ${name}: its odds rose ${times(ratio)}.`;
  if (ratio <= 1 / LITTLE) return `Speaks against ${name}: its odds fell ${times(1 / ratio)}.`;
  return `Says little of ${name}.`;
}

function times(ratio: number): string {
  return ratio > 1000 ? "more than a thousandfold" : `${figure(Number(ratio.toPrecision(2)))}-fold`;
}
