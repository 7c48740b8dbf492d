/** The law of a check, made once: told in words, or read as numbers. */
import type { CheckEntry } from "./check-entry.ts";
import type { CheckLaw } from "./check-law.ts";
import { numberLaw } from "./number-law.ts";
import { wordsLaw } from "./words-law.ts";

const laws = new Map<CheckEntry, CheckLaw>();

export function checkLaw(check: CheckEntry): CheckLaw {
  const made = laws.get(check) ?? (check.kind === "words" ? wordsLaw(check) : numberLaw(check));
  laws.set(check, made);
  return made;
}
