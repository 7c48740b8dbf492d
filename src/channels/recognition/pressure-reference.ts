/** What a pressure counts from: zero, the barometer up (gauge), or the barometer down (vacuum). */
import { STANDARD_ATMOSPHERE, toSi, type Unit } from "../../quantities/index.ts";
import type { QuantityId } from "../quantity-id.ts";
import type { Summary } from "./summary.ts";
import type { UnitMeaning } from "./unit-meaning.ts";

export type Reference = "absolute" | "gauge" | "vacuum";

const GAUGES: readonly QuantityId[] = ["manifoldPressure", "boostPressure", "boostSetPoint", "exhaustPressure"];
/** share of the largest reading: with the engine off a gauge pressure reads zero, an absolute one nearly its largest */
const ZERO_AT_REST = 0.1;
/** Pa: between compressor and throttle no engine draws deeper than this */
const LEAST_BOOST = 40e3;

export function referenceFor(
  quantity: QuantityId,
  u: Unit,
  said: { readonly unit: UnitMeaning | null; readonly vacuum: boolean },
  summary: Summary,
): Reference {
  if (!GAUGES.includes(quantity)) return "absolute";
  if (said.vacuum || said.unit?.reference === "vacuum") return "vacuum";
  if (said.unit?.reference != null) return said.unit.reference;
  if (summary.low < 0) return "gauge";
  if (summary.atRest !== null) return Math.abs(summary.atRest) < ZERO_AT_REST * summary.high ? "gauge" : "absolute";
  const neverDeep = quantity === "boostPressure" || quantity === "boostSetPoint" || quantity === "exhaustPressure";
  return neverDeep && toSi(summary.low, u) < LEAST_BOOST ? "gauge" : "absolute";
}

/** Pa of the barometer it counts from, and where that is known from. */
export function referenceOffset(reference: Reference, barometer: number | null): { pressure: number; words: string } {
  const pressure = barometer ?? STANDARD_ATMOSPHERE;
  const what = reference === "vacuum" ? "counted down from the barometer" : "gauge pressure";
  const from =
    barometer === null
      ? "the standard atmosphere, since no barometer is known"
      : `the barometer of ${Math.round(barometer / 100) / 10} kPa`;
  return { pressure, words: `${what}: made absolute with ${from}` };
}
