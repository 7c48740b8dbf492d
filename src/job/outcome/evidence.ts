/**
 * What speaks for and against a cause: where its signature is strongest and where it must be weak, each with what was seen.
 */
import { ownPrediction, type WeighedCause } from "../../findings/index.ts";
import type { Prepared, StandingObservation, TallyModel } from "../../tally/index.ts";
import type { Evidence, WitnessId } from "../result.ts";
import type { CommonAnswer } from "./air.ts";
import { departureAt, meanDeparture } from "./departures.ts";
import { capital, figure, lowOrHigh, placeOf, signedPercent, WITNESS_NAMES } from "./words.ts";

/** `short`: the same in one breath, what this cause would do in brackets. */
export type Told = { readonly evidence: Evidence; readonly short: string };

/** A predicted shift below this (ln) is no signature. */
const SEEN = 0.005;

export function evidenceFor(cause: WeighedCause, prepared: Prepared, answer: CommonAnswer): Told[] {
  const { model } = prepared;
  // One witness alone speaks for nothing and against nothing.
  if (model.witnesses.length < 2) return [];
  const { effect, standing } = ownPrediction(cause, prepared);
  const out = model.witnesses.flatMap((witness, j) =>
    strongAndWeak(model, effect, j).map((points) => compare(model, answer, effect, j, witness, points)),
  );
  model.standing.forEach((observation, i) => {
    const predicted = standing[i] ?? 0;
    if (predicted !== 0) out.push(standingTold(observation, predicted));
  });
  return out;
}

export function speaksOf(told: readonly Told[], bayesFactor: number | null): string {
  return told.length === 0
    ? keepsItsOdds(bayesFactor)
      ? "This recording cannot see it."
      : "Large it would be seen: only sizes too small to be seen are left."
    : `${capital(
        told
          .slice(0, 2)
          .map((t) => t.short)
          .join("; "),
      )}.`;
}

/** The recording left the chance of a cause against healthy nearly as it was. */
export function keepsItsOdds(bayesFactor: number | null): boolean {
  return bayesFactor !== null && bayesFactor > 0.5;
}

/** The third of the points where the signature is strongest and, where it differs much, the third where it is weakest. */
function strongAndWeak(model: TallyModel, effect: Float64Array, j: number): number[][] {
  const w = model.witnesses.length;
  const present = model.points.map((_, i) => i).filter((i) => model.present[i * w + j] === 1);
  const size = (i: number) => Math.abs(effect[i * w + j]!);
  const sorted = [...present].sort((a, b) => size(b) - size(a));
  if (sorted.length === 0 || size(sorted[0]!) < SEEN) return [];
  const third = Math.max(1, Math.ceil(sorted.length / 3));
  const strong = sorted.slice(0, third);
  const weak = sorted.slice(-third);
  return size(weak[0]!) < 0.5 * size(strong[strong.length - 1]!) && sorted.length > 1 ? [strong, weak] : [strong];
}

function compare(
  model: TallyModel,
  answer: CommonAnswer,
  effect: Float64Array,
  j: number,
  witness: string,
  points: readonly number[],
): Told {
  const w = model.witnesses.length;
  const seen = meanDeparture(
    points.map((i) => departureAt(model, answer, i, j)),
    model.discrepancy[j]!,
  );
  const predicted = signedPercent(points.reduce((sum, i) => sum + effect[i * w + j]!, 0) / points.length);
  const place = placeOf(model, points);
  const reads = seen === null ? "not recorded" : lowOrHigh(seen.value);
  const doubt = seen === null ? "" : ` (± ${(164.5 * seen.sd).toFixed(1)})`;
  return {
    short: `${WITNESS_NAMES[witness]} ${reads} ${place} (expected ${predicted})`,
    evidence: {
      text: `${capital(place)} ${WITNESS_NAMES[witness]} ${seen === null ? "was" : "reads"} ${reads}${doubt}; this cause would make it ${predicted}.`,
      points: points.map((i) => model.points[i]!.id),
      witness: witness as WitnessId,
      departure: seen?.value ?? null,
      sd: seen?.sd ?? null,
    },
  };
}

/** What was seen without air in it, in words; the unit follows from the kind. */
function standingSeen({ kind, unit, reading }: StandingObservation): { readonly when: string; readonly seen: string } {
  const amount = `${figure(reading)} ${unit === "1" ? "of its range" : unit}`;
  const standing = "engine standing, key on";
  switch (kind) {
    case "meter-at-zero-flow":
      return {
        when: standing,
        seen:
          unit === "g/s"
            ? `${amount} of air were reported`
            : `the air meter's signal was ${amount} off that of no flow`,
      };
    case "intake-temperature-at-cold-soak":
      return {
        when: "cold, before the start",
        seen: `the intake temperature was ${amount} off coolant and surroundings`,
      };
    case "full-load-pressure-drop":
      return { when: "at full load", seen: `${amount} more than usual were lost before the manifold` };
    default:
      return { when: standing, seen: `the pressure sensor read ${amount} beside the barometer` };
  }
}

function standingTold(observation: StandingObservation, predicted: number): Told {
  const { when, seen } = standingSeen(observation);
  const unit = observation.unit === "1" ? "" : ` ${observation.unit}`;
  const caution =
    observation.kind === "pressure-against-barometer"
      ? " (Some engine computers take their barometer from this very sensor: then they agree by construction.)"
      : "";
  return {
    short: `${when}, ${seen} (expected ${figure(predicted)})`,
    evidence: {
      text: `${capital(when)}: ${seen}; this cause would make it ${figure(predicted)}${unit}.${caution}`,
      points: [],
      witness: observation.meter ?? "pressure",
      departure: null,
      sd: null,
    },
  };
}
