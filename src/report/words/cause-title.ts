/** The title of a cause, with its bank; and small turns of phrase. */
import type { View } from "../../job/result.ts";

export function causeTitle(view: View, cause: string, bank: 1 | 2 | null): string {
  const title = view.causes[cause]?.title ?? cause;
  return bank === null ? title : `${title}, bank ${bank}`;
}

/** With a capital letter and a full stop. */
export function sentence(text: string): string {
  const start = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(start) ? start : `${start}.`;
}

/** "a", "a and b", "a, b and c" */
export function listed(parts: readonly string[], last = "and"): string {
  if (parts.length <= 1) return parts[0] ?? "";
  return `${parts.slice(0, -1).join(", ")} ${last} ${parts.at(-1)}`;
}

/** "Air enters ..." -> "air enters ...", but not "EGR ...". */
export function lowerFirst(text: string): string {
  return /^[A-Z][^A-Z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

/** "two", "three" ... for the small numbers of a sentence */
export function countWord(count: number): string {
  return ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"][count] ?? String(count);
}
