/**
 * What a word means: looked up; else cut into known words ("Ladelufttemperatur"); else taken as an abbreviation (its
 * beginning, or its consonants, are those of known words) or as a misspelling by one letter.
 */
import table from "./words.json" with { type: "json" };

/** One word, with every concept it can stand for ("charge": boost in English, load in French). */
export type Term = readonly string[];

/** word or phrase -> its terms; a fixed phrase or an abbreviation stands for several */
const known = new Map<string, readonly Term[]>();
for (const [concept, languages] of Object.entries(table.words)) {
  for (const words of Object.values(languages)) {
    for (const word of words.split(" ")) addMeaning(word.replaceAll("_", " "), concept);
  }
}
for (const [phrase, concepts] of Object.entries(table.short)) known.set(phrase.replaceAll("_", " "), termsOf(concepts));

const symbols = new Map(Object.entries(table.symbols).map(([letter, concepts]) => [letter, termsOf(concepts)]));

function addMeaning(word: string, concept: string): void {
  const before = known.get(word)?.[0] ?? [];
  if (!before.includes(concept)) known.set(word, [[...before, concept]]);
}

function termsOf(concepts: string): readonly Term[] {
  return concepts.split(" ").map((concept) => [concept]);
}

/** A word or phrase as it stands. */
export function lookUp(phrase: string): readonly Term[] | undefined {
  return known.get(phrase);
}

/** A letter that leads a name as a symbol of physics: T_Coolant, n_Engine. */
export function symbolOf(letter: string): readonly Term[] | undefined {
  return symbols.get(letter);
}

/** Longer words are no words. */
const LONGEST_WORD = 60;
/** What was deciphered before: a recording may have ten thousand columns named alike. */
const deciphered = new Map<string, readonly Term[] | null>();
const MOST_REMEMBERED = 5_000;

/** A single word that is not listed. */
export function decipher(word: string): readonly Term[] | null {
  if (word.length > LONGEST_WORD) return null;
  let terms = deciphered.get(word);
  if (terms === undefined) {
    terms = compound(word) ?? abbreviation(word) ?? misspelling(word);
    if (deciphered.size >= MOST_REMEMBERED) deciphered.clear();
    deciphered.set(word, terms);
  }
  return terms;
}

const LINKS = ["", "s", "n", "en", "es", "er"];
const SHORTEST_PART = 3;

/** "ladelufttemperatur" -> lade, luft, temperatur: fewest parts, each known, linked as German links its words. */
function compound(word: string): readonly Term[] | null {
  if (word.length < 2 * SHORTEST_PART) return null;
  const best: ({ parts: number; terms: readonly Term[] } | undefined)[] = [{ parts: 0, terms: [] }];
  for (let end = SHORTEST_PART; end <= word.length; end++) {
    for (let start = 0; start <= end - SHORTEST_PART; start++) {
      const before = best[start];
      const terms = known.get(word.slice(start, end));
      if (before === undefined || terms === undefined) continue;
      for (const link of LINKS) {
        const stop = end + link.length;
        if (!word.startsWith(link, end) || (link !== "" && stop >= word.length)) continue;
        if ((best[stop]?.parts ?? Number.POSITIVE_INFINITY) <= before.parts + 1) continue;
        best[stop] = { parts: before.parts + 1, terms: [...before.terms, ...terms] };
      }
    }
  }
  return best[word.length]?.terms ?? null;
}

const FEWEST_LETTERS = 3;
/** An abbreviation of more things than this is none. */
const MOST_MEANINGS = 3;

/** "eng" begins engine, "spd" has the consonants of speed; every concept so begun or spelt is a possible meaning. */
function abbreviation(word: string): readonly Term[] | null {
  if (word.length < FEWEST_LETTERS) return null;
  const spelt = /[aeiou]/.test(word)
    ? (full: string) => full.startsWith(word)
    : (full: string) => skeleton(full) === word;
  return meaningOf((full) => full.length > word.length && spelt(full));
}

function skeleton(word: string): string {
  return (
    word.slice(0, 1) +
    word
      .slice(1)
      .replace(/[aeiou]/g, "")
      .replace(/(.)\1/g, "$1")
  );
}

function misspelling(word: string): readonly Term[] | null {
  return word.length <= FEWEST_LETTERS
    ? null
    : meaningOf((full) => full.length > FEWEST_LETTERS && oneLetterOff(word, full));
}

function meaningOf(matches: (full: string) => boolean): readonly Term[] | null {
  const concepts = new Set<string>();
  for (const [full, terms] of known) {
    if (!full.includes(" ") && terms.length === 1 && matches(full))
      for (const concept of terms[0]!) concepts.add(concept);
  }
  return concepts.size === 0 || concepts.size > MOST_MEANINGS ? null : [[...concepts]];
}

/** One letter changed, left out, put in, or two neighbours swapped. */
function oneLetterOff(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false;
  let i = 0;
  while (i < a.length && a[i] === b[i]) i++;
  const rest = (x: string, skip: number) => x.slice(i + skip);
  if (a.length > b.length) return rest(a, 1) === rest(b, 0);
  if (a.length < b.length) return rest(a, 0) === rest(b, 1);
  return rest(a, 1) === rest(b, 1) || (a[i] === b[i + 1] && a[i + 1] === b[i] && rest(a, 2) === rest(b, 2));
}
