/** What a column can be: words, unit and values together, each candidate with its confidence and its reasons. */
import { unit as unitNamed } from "../../quantities/index.ts";
import type { RawColumn } from "../../recording/index.ts";
import { type QuantityId, quantityInfo } from "../quantity-id.ts";
import { conversionFor } from "./conversion.ts";
import type { Conversion, Surroundings } from "./conversion-types.ts";
import { matchName } from "./match-name.ts";
import type { NameParts } from "./parse-name.ts";
import type { Pattern } from "./patterns.ts";
import { type Reading, readingsOf } from "./readings.ts";
import { inSi, type SiScale, scaleOf } from "./si-scale.ts";
import type { Summary } from "./summary.ts";

export type Candidate = {
  readonly quantity: QuantityId;
  readonly bank: 1 | 2 | null;
  readonly confidence: number;
  readonly conversion: Conversion;
  readonly reasons: readonly string[];
};

const MOST = 0.99;
/** A unit that is not known, or said twice: asked, however well the rest fits. */
const DOUBTFUL = 0.5;
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

function judge(
  reading: Reading,
  pattern: Pattern,
  score: number,
  summary: Summary,
  around: Surroundings,
): Candidate | null {
  const { unit, unitText } = reading;
  if (pattern.unit !== null && unit !== null && unit.unit.dimension !== pattern.unit) return null;
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
  const doubts = doubtsOf(reading, pattern, quantity);
  const side = sideOfThrottle(quantity, pattern, conversion.scale, summary);
  return {
    quantity,
    bank: bankOf(quantity, reading.name),
    confidence: Math.min(MOST, score * conversion.fit * side * (doubts.length > 0 ? DOUBTFUL : 1)),
    conversion,
    reasons: [words, ...doubts, ...conversion.reasons],
  };
}

/** Why the unit can't be trusted, although words and values may fit. */
function doubtsOf(
  { unit, unitText, unreadUnit, rival, name }: Reading,
  pattern: Pattern,
  quantity: QuantityId,
): string[] {
  const doubts: string[] = [];
  if (unreadUnit !== null) doubts.push(`unit "${unreadUnit}" is not known`);
  if (pattern.unit !== null && unit === null) doubts.push("only its unit could tell");
  if (rival !== null) {
    doubts.push(`its name says ${rival}, its unit says ${unitText}: pin the right unit in a channel list`);
  }
  const counted = unit === null && name.terms.some((term) => term.includes("counts"));
  if (counted && quantityInfo(quantity).unit !== "1") doubts.push("counts of a converter, whose scale is not known");
  return doubts;
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
