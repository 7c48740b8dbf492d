/**
 * One engine as built: how its parts differ from the drawing, all within healthy tolerances (healthy-tolerances.json).
 * What is drawn here is what the inference must live with on a healthy engine.
 */

import type { SeededRandom } from "../numerics/index.ts";
import { assert } from "../quantities/index.ts";
import table from "./healthy-tolerances.json" with { type: "json" };
import { drawVariation, NO_VARIATION, type SmoothVariation } from "./smooth-variation.ts";

export type EngineParts = {
  /** ln(true / assumed) */
  readonly breathingScale: number;
  /** the same over speed (1/s) and manifold pressure (Pa) */
  readonly breathingShape: SmoothVariation;
  /** of this engine over the drawing's */
  readonly residualStrength: number;
  /** ln(reading / truth) */
  readonly meterScale: number;
  /** the same over ln(flow in kg/s) */
  readonly meterShape: SmoothVariation;
  /** ln(delivered / expected) */
  readonly injectorScale: number;
  /** half the difference of bank 1 and bank 2, of engines with two */
  readonly bankInjectorScale: number;
  readonly bankLambdaBias: number;
  /** s, true minus assumed */
  readonly injectorDeadTime: number;
  /** ln(true / assumed stoichiometric ratio) */
  readonly fuelRatio: number;
  /** reading minus truth: Pa, K, Pa, 1 */
  readonly pressureBias: number;
  readonly temperatureBias: number;
  readonly barometerBias: number;
  readonly lambdaBias: number;
  /** of the workshop's own wide probe */
  readonly independentLambdaBias: number;
  /** ln(area / drawing) */
  readonly throttleScale: number;
  readonly egrValveScale: number;
  /** heat transfer over the drawing's */
  readonly wallHeat: number;
  /** K, warming of the intake air at idle flow */
  readonly heatSoak: number;
  /** kg of fuel per kg of air through the purge valve */
  readonly purgeRichness: number;
};

export type ToleranceName = (typeof table.tolerances)[number]["part"];
export const HEALTHY_TOLERANCES = table.tolerances;

/** `spread` scales every tolerance: 1 as published, 0 the engine as drawn. */
export function drawParts(random: SeededRandom, spread = 1): EngineParts {
  const draw = (part: string) => spread * tolerance(part) * cutNormal(random.fork(part));
  return {
    breathingScale: draw("breathingScale"),
    breathingShape: drawShape(random, "breathingShape", spread, [25, 35e3]),
    residualStrength: 1 + draw("residualStrength"),
    meterScale: draw("meterScale"),
    meterShape: drawShape(random, "meterShape", spread, [0.8]),
    injectorScale: draw("injectorScale"),
    bankInjectorScale: draw("bankInjectorScale"),
    bankLambdaBias: draw("bankLambdaBias"),
    injectorDeadTime: draw("injectorDeadTime"),
    fuelRatio: draw("fuelRatio"),
    pressureBias: draw("pressureBias"),
    temperatureBias: draw("temperatureBias"),
    barometerBias: draw("barometerBias"),
    lambdaBias: draw("lambdaBias"),
    independentLambdaBias: draw("independentLambdaBias"),
    throttleScale: draw("throttleScale"),
    egrValveScale: draw("egrValveScale"),
    wallHeat: 1 + draw("wallHeat"),
    heatSoak: 8 + draw("heatSoak"),
    // from a canister that has just been emptied to one that holds up to 2 % of the fuel at part load
    purgeRichness: spread * 0.15 * random.fork("purgeRichness").uniform(),
  };
}

function drawShape(random: SeededRandom, part: string, spread: number, lengths: readonly number[]): SmoothVariation {
  return spread === 0 ? NO_VARIATION : drawVariation(random.fork(part), spread * tolerance(part), lengths);
}

/** sd of one part, SI */
export function tolerance(part: string): number {
  const row = table.tolerances.find((t) => t.part === part);
  assert(row !== undefined, `no tolerance named ${part}`);
  return row.sd;
}

function cutNormal(random: SeededRandom): number {
  for (;;) {
    const x = random.normal();
    if (Math.abs(x) <= 2) return x;
  }
}
