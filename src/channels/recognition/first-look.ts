/**
 * A first look over all columns, for what helps to judge each of them: the barometer, the rows in which the engine stood,
 * the units in use.
 */

import { QUALITY } from "../../quantities/index.ts";
import type { RawColumn } from "../../recording/index.ts";
import { candidatesFor } from "./candidates.ts";
import type { Surroundings } from "./conversion-types.ts";
import { inSi } from "./si-scale.ts";
import { type Summary, summarise } from "./summary.ts";

export type FirstLook = { readonly around: Surroundings; readonly summaries: readonly Summary[] };

const CONFIDENT = 0.6;
/** 1/s, a crankshaft slower than this stands */
const STANDING = 0.5;

export function firstLook(columns: readonly RawColumn[], given: Omit<Surroundings, "habits">): FirstLook {
  const plain = columns.map((column) => summarise(column, null));
  const start: Surroundings = { ...given, habits: [] };
  let barometer = given.barometer;
  let resting: Uint8Array | null = null;
  let surest = CONFIDENT;
  const habits = new Set<string>(isGerman(columns) ? ["kg/h"] : []);
  for (const [i, column] of columns.entries()) {
    const summary = plain[i]!;
    const best = summary.count === 0 ? undefined : candidatesFor(column, summary, start)[0];
    if (best === undefined || best.confidence < CONFIDENT) continue;
    const { scale, unitUsed } = best.conversion;
    // What is stated, or is forced by the values against the usual unit, tells what the logger likes.
    habits.add(unitUsed.split(" ")[0]!);
    if (best.quantity === "barometer" && barometer === null) barometer = inSi(scale, summary.median);
    if (best.quantity === "engineSpeed" && best.confidence > surest) {
      surest = best.confidence;
      resting = Uint8Array.from(column.values, (value, row) =>
        column.quality[row] === QUALITY.good && inSi(scale, value) < STANDING ? 1 : 0,
      );
    }
  }
  const rests = resting?.includes(1) === true;
  return {
    around: { ...given, barometer, habits: [...habits].filter((symbol) => !DEFAULTS.has(symbol)) },
    summaries: rests ? columns.map((column) => summarise(column, resting)) : plain,
  };
}

const GERMAN = /drehzahl|druck|luft|spannung|geschwindigkeit|drossel|einspritz|zünd|zuend|kühl|kuehl|zeit/i;

/** German trade counts air by the hour where nothing is written (common practice, no source). */
function isGerman(columns: readonly RawColumn[]): boolean {
  return columns.filter((column) => GERMAN.test(column.header)).length >= 2;
}

/** The units taken where nothing is stated: their use tells nothing. */
const DEFAULTS = new Set(["degC", "kPa", "%", "1", "V", "deg", "1/min", "km/h", "g/s", "s"]);
