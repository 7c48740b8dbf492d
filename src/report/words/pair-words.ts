/** Two faults at once; where causes look alike they stand for one another. */
import type { WayView } from "../../job/result.ts";
import { countWord, lowerFirst } from "./cause-title.ts";

export function pairWords({ parts }: WayView): string {
  const sorted = [...parts].sort((a, b) => a.length - b.length);
  return `Two faults at once: ${sorted.map(partWords).join(" and ")}`;
}

function partWords(part: readonly string[]): string {
  const [first = "", second = ""] = part.map(lowerFirst);
  if (part.length === 1) return first;
  return `${first} (or ${part.length === 2 ? second : `one of ${countWord(part.length - 1)} that look the same`})`;
}
