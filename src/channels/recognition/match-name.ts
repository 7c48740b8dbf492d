/** How well the words of a header say each quantity. */
import type { NameParts } from "./parse-name.ts";
import { PATTERNS, type Pattern } from "./patterns.ts";

export type NameMatch = { readonly pattern: Pattern /** 0 to 1 */; readonly score: number };

/** What a word without meaning counts beside one with meaning: it may name another thing ("coolant ... temperature"). */
const UNKNOWN_WEIGHT = 3;
/**
 * Concepts that change what is measured: a pattern that does not expect them does not hold. Number, fault and table of a
 * thing (aspect), its supply, its limit, its set-point are other quantities, however well the rest of the name fits.
 */
const DECISIVE: ReadonlySet<string> = new Set(
  "foreign aspect ratio supply reference heater error minimum maximum count setpoint commanded".split(" "),
);

/** Every pattern whose needs the words meet, best first; of equal ones the more specific first. */
export function matchName(name: NameParts): NameMatch[] {
  const matches: NameMatch[] = [];
  for (const pattern of PATTERNS) {
    const score = scoreOf(name, pattern);
    if (score > 0) matches.push({ pattern, score });
  }
  return matches.sort((a, b) => b.score - a.score || b.pattern.needs.length - a.pattern.needs.length);
}

function scoreOf(name: NameParts, pattern: Pattern): number {
  const { terms } = name;
  const served = pattern.needs.every((group) => terms.some((term) => term.some((concept) => group.includes(concept))));
  if (!served) return 0;
  const belongs = (concept: string) =>
    pattern.also.includes(concept) || pattern.needs.some((group) => group.includes(concept));
  let explained = 0;
  for (const term of terms) {
    if (term.some(belongs)) explained++;
    else if (term.every((concept) => DECISIVE.has(concept))) return 0;
    else if (term.some((concept) => pattern.not.includes(concept))) return 0;
  }
  const all = terms.length + UNKNOWN_WEIGHT * name.unknown.length;
  return pattern.base * (0.4 + 0.6 * (explained / all));
}
