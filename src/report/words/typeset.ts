import { NARROW_SPACE } from "./number-words.ts";

/** Sentences that come with the outcome are plain text; here the powers of their units are raised ("3.5 mm2") and "13 %" is held together. */
export function typeset(text: string): string {
  return text
    .replace(/(?<=\d) (?=%)/g, NARROW_SPACE)
    .replace(/(?<=\d[ \u202f])([cm]?m)([23])\b/g, (_, unit: string, power: string) => {
      return `${unit}${power === "2" ? "\u00b2" : "\u00b3"}`;
    });
}
