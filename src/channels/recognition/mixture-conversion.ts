/** Mixtures written as lambda, as air-fuel ratio or as its inverse, and trims written as a factor. */
import { unit } from "../../quantities/index.ts";
import type { QuantityId } from "../quantity-id.ts";
import type { Conversion } from "./conversion-types.ts";
import { EXPECTATIONS } from "./expectations.ts";
import { type SiScale, scaleOf, shareInside } from "./si-scale.ts";
import type { Summary } from "./summary.ts";
import type { UnitMeaning } from "./unit-meaning.ts";

/** Displays of air-fuel ratio count in petrol numbers, 14.7 for lambda 1, whatever the fuel (common practice, no source). */
const DISPLAY_STOICHIOMETRIC = 14.7;

/** French "richesse", Spanish "dosado relativo" and phi count fuel over air: the inverse of lambda. */
const FUEL_OVER_AIR = /richesse|dosado|\bphi\b|φ/i;

export function mixtureConversion(
  quantity: QuantityId,
  stated: UnitMeaning | null,
  summary: Summary,
  stoichiometric: number,
  words = "",
): Conversion {
  const { median } = summary;
  const made = (unitUsed: string, scale: SiScale, reason: string): Conversion => ({
    unitUsed,
    scale,
    fit: summary.constant ? 0.9 : usualFit(quantity, scale, summary),
    reasons: [reason],
  });
  const looksLikeRatio = stated?.unit.symbol !== "%" && median > 5 && median < 40;
  if (stated?.form === "air-fuel-ratio" || looksLikeRatio) {
    const one = lambdaOneAt(median, stoichiometric);
    const reason = `air-fuel ratio, ${Number(one.toPrecision(4))} for lambda 1`;
    return made("AFR", { factor: 1 / one, offset: 0, inverse: false }, reason);
  }
  if (stated?.form === "equivalence" || FUEL_OVER_AIR.test(words)) {
    return made("phi", { factor: 1, offset: 0, inverse: true }, "fuel-air equivalence ratio, inverted");
  }
  const u = stated?.unit ?? unit("1");
  return made(u.symbol, scaleOf(u), "ratio to the stoichiometric mixture");
}

/** Some displays are set to the fuel. An engine mostly runs near lambda 1: the scale under which it clearly does so is taken. */
function lambdaOneAt(median: number, own: number): number {
  const off = (one: number) => Math.abs(Math.log(median / one));
  return off(own) < off(DISPLAY_STOICHIOMETRIC) - 0.1 ? own : DISPLAY_STOICHIOMETRIC;
}

/** Trims are also written as a factor around 1, or around 100 %. Null where they are not. */
export function trimFactorConversion(
  quantity: QuantityId,
  stated: UnitMeaning | null,
  summary: Summary,
): Conversion | null {
  const { median, low, high } = summary;
  const near = (one: number) =>
    low > 0.4 * one && high < 1.7 * one && median > 0.7 * one && median < 1.4 * one && high - low < one;
  const factor = stated?.form === "factor" || (stated?.unit.symbol !== "%" && near(1));
  const percent = stated?.form === "percent-factor" || near(100);
  if (!factor && !percent) return null;
  const one = factor ? 1 : 100;
  const scale = { factor: 1 / one, offset: -1, inverse: false };
  return {
    unitUsed: factor ? "factor" : "% factor",
    scale,
    fit: 0.95 * usualFit(quantity, scale, summary),
    reasons: [`a factor around ${one}: ${one} is no correction`],
  };
}

function usualFit(quantity: QuantityId, scale: SiScale, summary: Summary): number {
  const [low, high] = EXPECTATIONS[quantity].usual;
  const share = shareInside(scale, summary.sorted, low, high);
  return share >= 0.9 ? 1 : 0.2 + 0.8 * share;
}
