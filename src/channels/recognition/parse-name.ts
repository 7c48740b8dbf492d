/**
 * A header taken apart into concepts of the trade ("Kühlmitteltemperatur" -> coolant, temperature), whatever the language:
 * accents off, camel case and marks parted, phrases and words looked up or deciphered; numbers told as bank or sensor.
 */
import { decipher, lookUp, symbolOf, type Term } from "./vocabulary.ts";

export type NameParts = {
  readonly terms: readonly Term[];
  /** words that mean nothing here */
  readonly unknown: readonly string[];
  readonly bank: 1 | 2 | null;
  /** number of the probe on its bank, counted from the engine */
  readonly sensor: number | null;
  /** a number that is not said to be a bank or sensor ("Lambda 2") */
  readonly index: number | null;
};

const LONGEST_PHRASE = 4;
/** A longer name is a sentence, or damage. */
const LONGEST_NAME = 200;
const MOST_WORDS = 24;
const BANK_AND_SENSOR = /^(?:b|bank)([12])(?:s|sensor)([1-4])$/;
const BANK = /^b([12])$/;
const SENSOR = /^s([1-4])$/;
const PROBE_PLACE = /^(?:h?o2s)([12])([1-4])$/;

export function parseName(header: string): NameParts {
  const tokens = tokensOf(header.slice(0, LONGEST_NAME)).slice(0, MOST_WORDS);
  const terms: Term[] = [];
  const unknown: string[] = [];
  let bank: 1 | 2 | null = null;
  let sensor: number | null = null;
  let index: number | null = null;
  let last: readonly string[] = [];
  const take = (found: readonly Term[]): void => {
    terms.push(...found.filter((term) => !term.includes("filler")));
    last = found.flat();
  };
  for (let i = 0; i < tokens.length; ) {
    const token = tokens[i]!;
    const place = BANK_AND_SENSOR.exec(token) ?? PROBE_PLACE.exec(token);
    if (/^\d+$/.test(token)) {
      const number = Number(token);
      if (last.includes("bank") && (number === 1 || number === 2)) bank = number;
      else if (last.includes("sensor") || last.includes("probe")) sensor = number;
      else index = number;
      i++;
    } else if (BANK.test(token)) {
      bank = Number(token[1]) as 1 | 2;
      take([["bank"]]);
      i++;
    } else if (SENSOR.test(token) && last.includes("bank")) {
      sensor = Number(token[1]);
      take([["sensor"]]);
      i++;
    } else if (place !== null) {
      bank = Number(place[1]) as 1 | 2;
      sensor = Number(place[2]);
      take(token.includes("o2") ? [["probe"]] : [["sensor"]]);
      i++;
    } else {
      const found = meaningAt(tokens, i);
      if (found === null) unknown.push(token);
      take(found?.terms ?? []);
      i += found?.length ?? 1;
    }
  }
  return { terms, unknown, bank, sensor, index };
}

type Found = { readonly terms: readonly Term[]; readonly length: number };

/** The longest phrase that begins at `i`; else the word deciphered. */
function meaningAt(tokens: readonly string[], i: number): Found | null {
  const token = tokens[i]!;
  // T_Coolant, and T2 of a numbered place; N75 is the name of a valve.
  const numbered = /^\d/.test(tokens[1] ?? "");
  if (i === 0 && token.length === 1 && (!numbered || (/[tp]/.test(token) && tokens.length > 2))) {
    const symbol = symbolOf(token);
    if (symbol !== undefined) return { terms: symbol, length: 1 };
  }
  // Coolant_T, Oil T: the symbol of a temperature behind the place it is of.
  if (i > 0 && i === tokens.length - 1 && token === "t") return { terms: symbolOf(token)!, length: 1 };
  // ACT alone is charge air temperature; beside other words it says that the value is the actual one.
  if (token === "act" && tokens.length > 1) return { terms: [["actual"]], length: 1 };
  for (let length = Math.min(LONGEST_PHRASE, tokens.length - i); length >= 1; length--) {
    const terms = lookUp(tokens.slice(i, i + length).join(" "));
    if (terms !== undefined) return { terms, length };
  }
  const terms = decipher(token);
  return terms === null ? null : { terms, length: 1 };
}

/** Lower-case words without accents; letters and digits parted unless the whole is a known word ("co2"). */
export function tokensOf(header: string): string[] {
  const plain = header
    .replaceAll("ß", "ss")
    .replaceAll(/[λΛ]/g, " lambda ")
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .replace(/([A-Z]+)([A-Z][a-z]{2,})/g, "$1 $2")
    .toLowerCase();
  return plain
    .split(/[^a-z0-9+]+/)
    .filter((token) => token !== "")
    .flatMap((token) => (isWhole(token) ? [token] : partDigits(token)));
}

function isWhole(token: string): boolean {
  return lookUp(token) !== undefined || [BANK_AND_SENSOR, PROBE_PLACE, BANK, SENSOR].some((place) => place.test(token));
}

function partDigits(token: string): string[] {
  const place = /^(.*?)(b[12]s[1-4])$/.exec(token);
  if (place !== null) return [...partDigits(place[1]!), place[2]!].filter((part) => part !== "");
  const chemical = /^(o2s?|co2)(.*)$/.exec(token);
  if (chemical !== null) return [chemical[1]!, ...(chemical[2] === "" ? [] : partDigits(chemical[2]!))];
  return token.split(/(?<=\D)(?=\d)|(?<=\d)(?=\D)/);
}
