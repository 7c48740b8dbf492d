/** What a column can be: words, unit and values together, each candidate with its confidence and its reasons. */
import { findUnit, unit as unitNamed } from "../../quantities/index.ts";
import type { RawColumn } from "../../recording/index.ts";
import { type QuantityId, quantityInfo } from "../quantity-id.ts";
import { conversionFor } from "./conversion.ts";
import type { Conversion, Surroundings } from "./conversion-types.ts";
import { matchName } from "./match-name.ts";
import { type NameParts, parseName } from "./parse-name.ts";
import type { Pattern } from "./patterns.ts";
import { inSi, type SiScale, scaleOf } from "./si-scale.ts";
import type { Summary } from "./summary.ts";
import { isBareUnit, type UnitMeaning, unitMeaning } from "./unit-meaning.ts";

export type Candidate = {
  readonly quantity: QuantityId;
  readonly bank: 1 | 2 | null;
  readonly confidence: number;
  readonly conversion: Conversion;
  readonly reasons: readonly string[];
};

const MOST = 0.99;
/** no word in it but one short one, perhaps with a number and a stroke: "krad", "x10 mV", "lbs/lap" */
const LIKE_A_UNIT = /^[\d.x*]*\s*[a-zµ°%]{1,6}(?:[/·*][a-z]{1,5})?\d?$/i;

export function candidatesFor(column: RawColumn, summary: Summary, around: Surroundings): Candidate[] {
  const best = new Map<QuantityId, Candidate>();
  for (const reading of readingsOf(column)) {
    for (const { pattern, score } of matchName(reading.name)) {
      const candidate = judge(reading, pattern, score, summary, around);
      if (candidate === null) continue;
      const known = best.get(candidate.quantity);
      if (known === undefined || candidate.confidence > known.confidence) best.set(candidate.quantity, candidate);
    }
  }
  return [...best.values()].sort((a, b) => b.confidence - a.confidence);
}

type Reading = {
  readonly name: NameParts;
  readonly words: string;
  readonly unit: UnitMeaning | null;
  readonly unitText: string | null;
  /** the header cell as written, unit included */
  readonly written: string;
};

/** The header as it stands; and, where its end can be a unit ("MAP_kPa"), the name before it with that unit. */
function readingsOf(column: RawColumn): Reading[] {
  const stated = column.unitText === null ? null : unitMeaning(column.unitText);
  const readings: Reading[] = [
    {
      name: parseName(column.header),
      words: column.header,
      unit: stated,
      unitText: column.unitText,
      written: column.headerText,
    },
  ];
  if (column.unitText === null) {
    const hidden = hiddenUnit(column.header);
    if (hidden !== null) {
      readings.push({
        name: parseName(hidden.name),
        words: hidden.name,
        unit: hidden.unit,
        unitText: hidden.text,
        written: hidden.name,
      });
    }
  }
  return readings;
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
      const isUnit = unit !== null && (findUnit(text) !== undefined || isBareUnit(text) || !/^[a-z]+$/i.test(text));
      // "Gear ratio", "Lambda": words of the name that also spell a ratio.
      const isWord = unit?.unit.dimension === "ratio" && /^[a-z]{4,}$/i.test(text) && text !== "percent";
      if (isUnit && !isWord) return { name: pieces.slice(0, -length).join(" "), unit, text };
    }
  }
  return null;
}

function judge(
  reading: Reading,
  pattern: Pattern,
  score: number,
  summary: Summary,
  around: Surroundings,
): Candidate | null {
  const { unit, unitText } = reading;
  if (pattern.unit !== null && unit !== null && unit.unit.dimension !== pattern.unit) return null;
  const unitMissing = pattern.unit !== null && unit === null;
  const quantity = quantityFor(pattern, reading.name);
  const vacuum = reading.name.terms.some((term) => term.includes("vacuum"));
  const conversion = conversionFor(quantity, { unit, words: reading.words, vacuum, pinned: false }, summary, around);
  const words = `"${reading.words}" names ${quantityInfo(quantity).name}`;
  if (conversion === null) {
    // The words say one thing, the unit another: shown, never used.
    const none: Conversion = { unitUsed: unitText ?? "", scale: scaleOf(unitNamed("1")), fit: 0, reasons: [] };
    const contradiction = `unit ${unitText} is no unit of it`;
    return { quantity, bank: null, confidence: score * 0.3, conversion: none, reasons: [words, contradiction] };
  }
  const doubt = sideOfThrottle(quantity, pattern, conversion.scale, summary);
  const unknownUnit = unitText !== null && unit === null && unitText.trim() !== "";
  const inName = unit === null ? null : unitInBrackets(reading.written);
  const twoUnits = inName !== null && unit !== null && inName.unit.symbol !== unit.unit.symbol;
  // One short word in brackets is a unit that is not known: another must not take its place in silence.
  const unreadable = unknownUnit && LIKE_A_UNIT.test(unitText);
  return {
    quantity,
    bank: bankOf(quantity, reading.name),
    confidence: Math.min(
      MOST,
      score * conversion.fit * doubt * (unreadable ? 0.6 : unknownUnit ? 0.8 : 1) * (unitMissing || twoUnits ? 0.5 : 1),
    ),
    conversion,
    reasons: [
      words,
      ...(unknownUnit ? [`unit "${unitText}" is not known`] : []),
      ...(unitMissing ? ["only its unit could tell"] : []),
      ...(twoUnits
        ? [`its name says ${inName.unit.symbol}, its unit says ${unit.unit.symbol}: pin the right one`]
        : []),
      ...conversion.reasons,
    ],
  };
}

/** A unit in brackets of the name, where a row of units below it may say another. */
function unitInBrackets(name: string): UnitMeaning | null {
  const inside = /[[(]([^\])]+)[\])]/.exec(name)?.[1];
  return inside === undefined ? null : unitMeaning(inside);
}

/** Pa: no engine draws deeper than this before its throttle; behind it every throttled one does */
const DEEPEST_BEFORE_THROTTLE = 65e3;

/** "Boost" that falls into vacuum is measured in the manifold; the factor says how far the pattern is to be believed. */
function sideOfThrottle(quantity: QuantityId, pattern: Pattern, scale: SiScale, summary: Summary): number {
  const boost = pattern.needs.some((group) => group.includes("boost"));
  if (!boost || summary.constant || (quantity !== "boostPressure" && quantity !== "manifoldPressure")) return 1;
  const deep = inSi(scale, summary.sorted[Math.floor(0.1 * summary.sorted.length)]!) < DEEPEST_BEFORE_THROTTLE;
  return deep === (quantity === "manifoldPressure") ? 1 : 0.6;
}

/** The probe behind the catalyst is the second one of its bank. */
function quantityFor(pattern: Pattern, name: NameParts): QuantityId {
  return pattern.quantity === "probeVoltage" && (name.sensor ?? 1) >= 2 ? "probeVoltageAfter" : pattern.quantity;
}

function bankOf(quantity: QuantityId, name: NameParts): 1 | 2 | null {
  if (!quantityInfo(quantity).bank) return null;
  if (name.bank !== null) return name.bank;
  return name.index === 1 || name.index === 2 ? name.index : null;
}
