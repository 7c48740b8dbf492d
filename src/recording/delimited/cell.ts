/** One cell, read with care: a number as its column writes it, nothing, or a word. The careful half of the two readers. */
import type { NumberFormat } from "./number-format.ts";

export type Cell =
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "missing" }
  | { readonly kind: "word"; readonly word: string };

const MISSING: Cell = { kind: "missing" };
const MISSING_WORDS = new Set([
  ..."n/a na n.a. n.v. n.a nan -nan nan(ind) -1.#ind 1.#qnan null none nil nodata no_data #n/a #na #n/v missing invalid".split(
    " ",
  ),
  ..."- -- --- ---- ----- . .. ... ? ?? # * k.a. k.w.".split(" "),
  ...["no data", "not available", "keine daten", "nicht verfügbar", "non disponible", "sin datos", "sem dados"],
]);
const PLAIN_NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

export function parseCell(raw: string, format: NumberFormat): Cell {
  const text = raw.trim();
  if (text === "") return MISSING;
  const plain = plainNumber(text, format);
  if (plain !== null) {
    const value = Number(plain);
    return Number.isFinite(value) ? { kind: "number", value } : { kind: "word", word: text };
  }
  return MISSING_WORDS.has(text.toLowerCase()) ? MISSING : { kind: "word", word: text };
}

/** The text as a number that any program reads, or null. A mark where the format has none makes it a word. */
function plainNumber(text: string, format: NumberFormat): string | null {
  let number = text;
  if (format.glued !== "" && number.endsWith(format.glued)) number = number.slice(0, -format.glued.length).trimEnd();
  if (number.startsWith("\u2212")) number = `-${number.slice(1)}`;
  const ungrouped = withoutGroups(number, format);
  if (ungrouped === null) return null;
  number = ungrouped;
  if (format.decimal === ",") {
    if (number.includes(".")) return null;
    number = number.replace(",", ".");
  }
  return PLAIN_NUMBER.test(number) ? number : null;
}

/** "1.234,5" without its group marks. A mark not seen in the sample is accepted only beside the decimal mark. */
function withoutGroups(number: string, format: NumberFormat): string | null {
  const other = format.decimal === "." ? "," : ".";
  const mark = format.thousands === "" && number.includes(format.decimal) ? other : format.thousands;
  if (mark === "") return number;
  const normal = mark === " " ? number.replace(/[\u00a0\u202f]/g, " ") : number;
  if (!normal.includes(mark)) return normal;
  const [whole = "", ...rest] = normal.split(format.decimal);
  if (rest.join("").includes(mark)) return null;
  const groups = whole.split(mark);
  const first = (groups[0] ?? "").replace(/^[+-]/, "");
  const grouped = /^\d{1,3}$/.test(first) && groups.slice(1).every((group) => /^\d{3}$/.test(group));
  return grouped ? [groups.join(""), ...rest].join(format.decimal) : null;
}
