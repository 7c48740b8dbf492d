/** Words in a state column ("ON", "geschlossen", "CL") as the numbers of SAE J1979; null where a word is not known. */
import { QUALITY } from "../../quantities/index.ts";
import type { RawColumn } from "../../recording/index.ts";
import { parseName } from "./parse-name.ts";

const ON =
  /^(on|true|yes|y|active|activated|aktiv|an|ein|ja|oui|si|sí|sim|actif|activo|activado|ativo|ligado|marche|closed|geschlossen|ferme|fermé|cerrado|fechado|1)$/;
const OFF =
  /^(off|false|no|n|inactive|inaktiv|aus|nein|non|não|nao|inactif|inactivo|desactivado|inativo|desligado|arret|arrêt|open|offen|ouvert|abierto|aberto|0)$/;
/** Fuel system status, SAE J1979 PID 03: bits 0 to 4. */
const LOOP: readonly (readonly [RegExp, number])[] = [
  [/fault|fehler|defaut|fallo|falha/, 8],
  [/drive|load|last|charge|carga/, 4],
  [/clos|^cl\b|geschlossen|ferme|cerrad|fechad|regelung aktiv/, 2],
  [/open|^ol\b|offen|ouvert|abiert|abert|steuerung/, 1],
];

/** The column with its words as numbers, if most of its cells are words and every word is a known state. */
export function withStatesAsNumbers(column: RawColumn): RawColumn {
  const { texts } = column;
  if (texts === null || texts.dictionary.length > 16 || texts.rows.length < 0.3 * column.values.length) return column;
  const concepts = parseName(column.header).terms.flat();
  const tellsLoop = concepts.includes("loop") || concepts.includes("fuel") || concepts.includes("lambda");
  const numbers = texts.dictionary.map((word) => (tellsLoop ? loopNumber(word) : null) ?? switchNumber(word));
  if (numbers.some((number) => number === null)) return column;
  const values = column.values.slice();
  const quality = column.quality.slice();
  for (let i = 0; i < texts.rows.length; i++) {
    const row = texts.rows[i]!;
    values[row] = numbers[texts.words[i]!]!;
    quality[row] = QUALITY.good;
  }
  return { ...column, values, quality };
}

function switchNumber(word: string): number | null {
  const text = word.trim().toLowerCase();
  if (ON.test(text)) return 1;
  return OFF.test(text) ? 0 : null;
}

function loopNumber(word: string): number | null {
  const text = word.trim().toLowerCase();
  const found = LOOP.filter(([pattern]) => pattern.test(text)).map(([, bit]) => bit);
  if (found.length === 0) return null;
  return found[0] === 8 && found.includes(2) ? 16 : found[0]!;
}
