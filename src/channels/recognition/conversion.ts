/**
 * How the numbers of a column become SI values of a quantity: its unit as stated, or the likeliest unit whose values are
 * plausible. Says why, and how far the choice may be trusted.
 */
import { type Unit, unit } from "../../quantities/index.ts";
import { type QuantityId, quantityInfo } from "../quantity-id.ts";
import type { Conversion, Said, Surroundings } from "./conversion-types.ts";
import { EXPECTATIONS } from "./expectations.ts";
import { mixtureConversion, trimFactorConversion } from "./mixture-conversion.ts";
import { type Reference, referenceFor, referenceOffset } from "./pressure-reference.ts";
import { inSi, type SiScale, scaleOf, shareInside } from "./si-scale.ts";
import type { Summary } from "./summary.ts";

/** Share of the sample inside the usual range below which a unit is not believed. */
const ENOUGH = 0.9;
const MIXTURES: readonly QuantityId[] = ["lambda", "lambdaIndependent", "lambdaCommanded"];
const TRIMS: readonly QuantityId[] = ["shortTrim", "longTrim", "totalTrim"];

/** Null where the stated unit is no unit of the quantity. */
export function conversionFor(
  quantity: QuantityId,
  said: Said,
  summary: Summary,
  around: Surroundings,
): Conversion | null {
  if (said.unit !== null && said.unit.unit.si !== quantityInfo(quantity).unit) return null;
  if (MIXTURES.includes(quantity))
    return mixtureConversion(quantity, said.unit, summary, around.stoichiometric, said.words);
  const factor = TRIMS.includes(quantity) ? trimFactorConversion(quantity, said.unit, summary) : null;
  if (factor !== null) return factor;
  const stated = said.unit?.unit ?? null;
  if (quantity === "loopState") return loopConversion(said.words, summary);
  if (stated === null) return unstated(quantity, said, summary, around);
  const own = inUnit(quantity, stated, said, summary, around);
  const share = usualShare(quantity, own.scale, summary);
  if (share < 0.5 && !summary.constant && !said.pinned) return otherUnit(quantity, stated, own, said, summary, around);
  const fit = share < ENOUGH && !said.pinned ? 0.6 + 0.4 * share : 1;
  return { ...own, fit, reasons: [`unit ${stated.symbol} as stated`, ...own.reasons] };
}

/** SAE J1979 PID 03 codes; a flag, 0 or 1, says whether the loop it names is active. */
function loopConversion(words: string, summary: Summary): Conversion {
  const made = (unitUsed: string, factor: number, offset: number, reason: string): Conversion => ({
    unitUsed,
    scale: { factor, offset, inverse: false },
    fit: summary.low >= 0 && summary.high <= 16 ? 1 : 0.3,
    reasons: [reason],
  });
  const flag = summary.low === 0 && summary.high <= 1;
  if (!flag) return made("1", 1, 0, "codes of SAE J1979: 2 is closed loop");
  const open = /open|offen|ouvert|abiert|abert/i.test(words);
  return open
    ? made("open flag", -1, 2, "a flag: 1 is open loop")
    : made("closed flag", 1, 1, "a flag: 1 is closed loop");
}

/** The column read in one unit, from whatever its pressure counts. */
function inUnit(quantity: QuantityId, u: Unit, said: Said, summary: Summary, around: Surroundings): Conversion {
  const reference: Reference = referenceFor(quantity, u, said, summary);
  const plain = scaleOf(u);
  if (reference === "absolute") return { unitUsed: u.symbol, scale: plain, fit: 1, reasons: [] };
  const { pressure, words } = referenceOffset(reference, around.barometer);
  // A vacuum is written with or without its sign.
  const down = reference === "vacuum" && summary.median > 0 ? -1 : 1;
  return {
    unitUsed: `${u.symbol} ${reference}`,
    scale: { factor: down * plain.factor, offset: pressure, inverse: false },
    fit: 1,
    reasons: [words],
  };
}

/** No unit is written: the first of the usual ones whose values are plausible. */
function unstated(quantity: QuantityId, said: Said, summary: Summary, around: Surroundings): Conversion {
  const units = orderedUnits(quantity, summary, around);
  const judged = units.map((u) => {
    const own = inUnit(quantity, u, said, summary, around);
    const share = usualShare(quantity, own.scale, summary);
    return { u, own, share: isCoarse(quantity, own.scale, summary) ? 0.5 * share : share };
  });
  const plausible = judged.filter(({ share }) => share >= 0.95);
  const physical = plausible.find(({ own }) => agreesWithAir(quantity, own.scale, summary));
  const best = physical ?? plausible[0] ?? judged.toSorted((a, b) => b.share - a.share)[0]!;
  const certain = plausible.length > 0 || summary.constant;
  const fit = (certain ? 1 : 0.2 + 0.6 * best.share) * (best.u === units[0] ? 0.95 : 0.85);
  const why = certain ? "fits the values" : "is the likeliest, though some values are out of range";
  return { ...best.own, fit, reasons: [`no unit stated: ${best.u.symbol} ${why}`, ...best.own.reasons] };
}

/** Steps of more than this share of the usual range are settings (1, 2, 3), not readings of a sensor. */
const COARSE = 0.2;

function isCoarse(quantity: QuantityId, scale: SiScale, summary: Summary): boolean {
  if (summary.step === null || quantityInfo(quantity).unit === "1") return false;
  const [low, high] = EXPECTATIONS[quantity].usual;
  return Math.abs(scale.factor) * summary.step > COARSE * (high - low);
}

/** The usual units of a quantity, likeliest first: those the recording uses elsewhere before the others. */
function orderedUnits(quantity: QuantityId, summary: Summary, around: Surroundings): Unit[] {
  const usual = EXPECTATIONS[quantity].units.map(unit);
  if (usual[0]!.symbol === "%") return isFraction(summary) ? usual.toReversed() : usual;
  const rank = (u: Unit) => (around.habits.includes(u.symbol) ? 0 : 1);
  return usual.toSorted((a, b) => rank(a) - rank(b));
}

/** Shares without a unit: a fraction where nothing exceeds one and steps are finer than a per cent. */
function isFraction(summary: Summary): boolean {
  const fine = summary.step === null || summary.step < 0.02;
  const inside = summary.high <= 1.05 && summary.low >= -1.05;
  return !summary.constant && fine && inside && summary.high - summary.low > 0.02;
}

/** The stated unit puts most values where the quantity can't be: another unit of the same kind may fit. */
function otherUnit(
  quantity: QuantityId,
  stated: Unit,
  own: Conversion,
  said: Said,
  summary: Summary,
  around: Surroundings,
): Conversion {
  for (const symbol of EXPECTATIONS[quantity].units) {
    const other = inUnit(quantity, unit(symbol), said, summary, around);
    if (symbol === stated.symbol || usualShare(quantity, other.scale, summary) < 0.98) continue;
    const contradiction = `states ${stated.symbol}, but its values only fit ${symbol}: read so`;
    return { ...other, fit: 0.75, reasons: [contradiction, ...other.reasons] };
  }
  return {
    ...own,
    fit: 0.3,
    reasons: [`unit ${stated.symbol} as stated, but its values are out of range`, ...own.reasons],
  };
}

function usualShare(quantity: QuantityId, scale: SiScale, summary: Summary): number {
  const [low, high] = EXPECTATIONS[quantity].usual;
  const inside = shareInside(scale, summary.sorted, low, high);
  // An engine stands, or turns: what lies between is no engine speed.
  return quantity === "engineSpeed" ? inside - shareInside(scale, summary.sorted, 1e-6, SLOWEST) : inside;
}

/** 1/s, slower than any starter turns an engine */
const SLOWEST = 1;
/** Pa: the air around, anywhere on a road */
const AIR = [60e3, 108e3] as const;
/** Pa: a manifold that never exceeds this, in the usual unit, has perhaps never been read in that unit */
const NEVER_LOADED = 40e3;

/**
 * With the engine off a pressure in the intake equals the barometer. Failing that: a throttled engine at full load comes
 * near it, so a unit under which the largest value is just the air around tells more than one under which it never gets near.
 */
function agreesWithAir(quantity: QuantityId, scale: SiScale, summary: Summary): boolean {
  if (quantity !== "manifoldPressure" && quantity !== "boostPressure" && quantity !== "barometer") return true;
  const isAir = (raw: number) => inSi(scale, raw) > AIR[0] && inSi(scale, raw) < AIR[1];
  if (summary.atRest !== null) return isAir(summary.atRest);
  const usualLargest = inSi(scaleOf(unit("kPa")), summary.high);
  if (quantity !== "manifoldPressure" || usualLargest > NEVER_LOADED) return true;
  return isAir(summary.high) && inSi(scale, summary.low) < 0.75 * inSi(scale, summary.high);
}
