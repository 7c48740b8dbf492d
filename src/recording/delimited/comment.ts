/** Lines that are remarks, not rows. */
import type { Delimiter } from "./split-row.ts";

export function isComment(line: string, delimiter: Delimiter): boolean {
  const text = line.trimStart();
  if (text.startsWith("#") || text.startsWith("%") || text.startsWith("//")) return true;
  return delimiter !== ";" && text.startsWith(";");
}
