/** A workshop check entered, in words: its title and what it showed. */
import { checkById, type FoundResult } from "../../findings/index.ts";
import { fromSi, unit } from "../../quantities/index.ts";
import { figure } from "./words.ts";

export function tellFound({ check, outcome, numbers, bank }: FoundResult): { title: string; shown: string } {
  const entry = checkById(check);
  if (entry === undefined) throw new Error(`Assertion failed: there is no check ${check}`);
  const title = bank === null ? entry.title : `${entry.title} (bank ${bank})`;
  if (entry.kind === "words") return { title, shown: entry.outcomes.find((o) => o.id === outcome)!.words };
  const shown = entry.values.map(({ name, of, against, usual, unit: symbol }) => {
    const { factor } = unit(symbol);
    // a difference has no offset of scale
    const value =
      against === null ? fromSi(numbers[of]!, unit(symbol)) - usual : (numbers[of]! - numbers[against]!) / factor;
    const sign = value > 0 ? "+" : "";
    return `${name} ${sign}${figure(value)}${symbol === "1" ? "" : ` ${symbol}`}`;
  });
  return { title, shown: shown.join("; ") };
}
