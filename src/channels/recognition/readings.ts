/**
 * How a header can be taken apart into a name and a unit, and what is odd about the unit: one that is not known, or one
 * that the name contradicts. A unit that is written is never replaced by another in silence.
 */
import { findUnit } from "../../quantities/index.ts";
import type { RawColumn } from "../../recording/index.ts";
import { type NameParts, parseName, tokensOf } from "./parse-name.ts";
import { type UnitMeaning, unitMeaning } from "./unit-meaning.ts";
import { lookUp } from "./vocabulary.ts";

export type Reading = {
  readonly name: NameParts;
  readonly words: string;
  readonly unit: UnitMeaning | null;
  readonly unitText: string | null;
  /** written where a unit stands, but neither a known unit nor words */
  readonly unreadUnit: string | null;
  /** the unit that the name says, where another one is stated beside or below it */
  readonly rival: string | null;
};

/** where a unit stands that the reader of the file did not take for one: brackets at the end, or a multiplier, "x10" */
const UNIT_PLACE = /(?:[([](?=[^()[\]]+[)\]]\s*$)|\s(?=[x*]\s?\d+\s*$))([^()[\]]+)[)\]]?\s*$/i;

export function readingsOf(column: RawColumn): Reading[] {
  const { header, unitText } = column;
  if (unitText !== null) return [withUnit(column, unitText)];
  const plain: Reading = {
    name: parseName(header),
    words: header,
    unit: null,
    unitText: null,
    unreadUnit: unreadIn(UNIT_PLACE.exec(header)?.[1] ?? ""),
    rival: null,
  };
  const hidden = hiddenUnit(header);
  if (hidden === null) return [plain];
  const { name, unit, text } = hidden;
  const split: Reading = { ...plain, name: parseName(name), words: name, unit, unitText: text, unreadUnit: null };
  // "Engine rpm", "Throttle min": the last word may be a unit, or a word of the name.
  return tokensOf(text).some((token) => token.length > 1 && lookUp(token) !== undefined) ? [plain, split] : [split];
}

function withUnit({ header, headerText }: RawColumn, unitText: string): Reading {
  const unit = unitMeaning(unitText);
  // "Lambda [bank 2]", "MAP [limit]", "Equivalence ratio [phi]": words where a unit could stand belong to the name.
  const isWords = unit === null || unit.form === "equivalence";
  return {
    name: parseName(isWords ? `${header} ${unitText}` : header),
    words: header,
    unit,
    unitText,
    unreadUnit: unit === null ? unreadIn(unitText) : null,
    rival: unit === null ? null : rivalOf(headerText, unit),
  };
}

/** The text, if it can't be read as words of the trade: "krad", "lbs/lap", "x10 mV". */
function unreadIn(text: string): string | null {
  const strange = (token: string) => !/^\d+$/.test(token) && lookUp(token) === undefined;
  const unread = text.trim() !== "" && (/[/*·^]/.test(text) || tokensOf(text).some(strange));
  return unread ? text.trim() : null;
}

/** The unit in brackets or at the end of the name, if it is another than the one stated. */
function rivalOf(headerText: string, stated: UnitMeaning): string | null {
  const bracketed = /[[(]([^\])]+)[\])]/.exec(headerText)?.[1] ?? "";
  const inBrackets = unitMeaning(bracketed);
  const named = inBrackets === null ? hiddenUnit(headerText) : { unit: inBrackets, text: bracketed };
  if (named === null) return null;
  const sameKind = named.unit.unit.dimension === stated.unit.dimension;
  // "(A)", "(1)" and a last word of another kind, "speed GPS [km/h]", are no unit.
  if (!sameKind && (inBrackets === null || /^.$|^\d+$/.test(named.text))) return null;
  const { reference } = named.unit;
  const otherReference = reference !== null && stated.reference !== null && reference !== stated.reference;
  return named.unit.unit.symbol !== stated.unit.symbol || otherReference ? named.text : null;
}

/** "airflow_g_per_s", "Boost psi", "batt V": one to three last pieces that spell a unit. */
function hiddenUnit(header: string): { name: string; unit: UnitMeaning; text: string } | null {
  const pieces = header.split(/[\s_]+/);
  for (let length = Math.min(3, pieces.length - 1); length >= 1; length--) {
    const tail = pieces.slice(-length);
    const spellings = [tail.join(""), tail.join("/"), tail.join("_")].map((text) => text.replace(/\/?_?per_?\/?/, "/"));
    for (const text of spellings) {
      // A single letter is a unit only as the symbol is written: "V", not "v"; "PEDAL_D" and "Bank A" name no unit.
      if (text.length === 1 && !/[VCFKs%°]/.test(text)) continue;
      const unit = unitMeaning(text === "pct" ? "%" : text);
      const isUnit = unit !== null && (findUnit(text) !== undefined || !/^[a-z]+$/i.test(text));
      // "Gear ratio", "Lambda": words of the name that also spell a ratio.
      const isWord = unit?.unit.symbol === "1" && /^[a-z]{4,}$/i.test(text);
      if (isUnit && !isWord) return { name: pieces.slice(0, -length).join(" "), unit, text };
    }
  }
  return null;
}
