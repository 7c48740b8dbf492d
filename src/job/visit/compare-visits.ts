/**
 * Visits of one engine beside each other: what each was judged to be, how far each witness departed where, and what changed.
 *
 * Rule   a change is told where its 90 % interval leaves zero out: departures of two visits of one engine share its own curves
 *        and breathing, so that their difference is better known than either, and the intervals are cautious
 */
import { type FoundResult, inseparableCauses, toldQuantile, type Weighed } from "../../findings/index.ts";
import type { Prepared, TallyModel } from "../../tally/index.ts";
import { type CommonAnswer, commonAnswer } from "../outcome/air.ts";
import { departureAt, meanDeparture } from "../outcome/departures.ts";
import { round } from "../outcome/points.ts";
import { verdictOf } from "../outcome/verdict.ts";
import type { ComparisonView, LoadRegion, VisitView, WitnessId } from "../result.ts";
import { changeSentence } from "./change-sentence.ts";

export type WeighedVisit = {
  readonly name: string;
  readonly recordings: readonly string[];
  readonly prepared: Prepared;
  readonly weighed: Weighed;
  /** workshop checks that hold for this visit */
  readonly found: readonly FoundResult[];
};

export function compareVisits(visits: readonly WeighedVisit[]): ComparisonView {
  const views = visits.map(viewOf);
  return { sentence: changeSentence(views[0]!, views[views.length - 1]!), visits: views };
}

function viewOf({ name, recordings, prepared, weighed, found }: WeighedVisit): VisitView {
  const { model } = prepared;
  const answer = commonAnswer(weighed, prepared);
  const verdict = verdictOf({ weighed, visibility: inseparableCauses(weighed), model, found });
  const [first] = verdict.leading;
  const at = (p: number) => round(toldQuantile(first!, p));
  return {
    name,
    recordings,
    answer: verdict.answer,
    headline: verdict.headline,
    healthyProbability: round(weighed.healthy.probability),
    leading:
      first === undefined
        ? null
        : {
            cause: first.cause.id,
            title: first.cause.title,
            bank: first.cause.bank,
            probability: round(first.probability),
            alike: verdict.leading.slice(1).map((c) => c.cause.title),
            size: {
              name: first.cause.sizeName,
              value: at(0.5),
              unit: first.cause.unit,
              low90: at(0.05),
              high90: at(0.95),
            },
          },
    departures: departuresOf(model, answer),
  };
}

const REGIONS: readonly LoadRegion[] = ["idle", "part load", "full load"];

function departuresOf(model: TallyModel, answer: CommonAnswer): VisitView["departures"] {
  return model.witnesses.flatMap((witness, j) =>
    REGIONS.flatMap((region) => {
      const points = model.points.map((_, i) => i).filter((i) => regionOf(model, i) === region);
      const parts = points.map((i) => departureAt(model, answer, i, j)).filter((part) => part !== null);
      const mean = meanDeparture(parts, model.discrepancy[j]!);
      if (mean === null) return [];
      return [
        {
          witness: witness as WitnessId,
          region,
          departure: round(mean.value),
          sd: round(mean.sd),
          points: parts.length,
        },
      ];
    }),
  );
}

/** Fuel cut and warming up are none of the three. */
function regionOf(model: TallyModel, i: number): LoadRegion | null {
  const { states } = model.points[i]!;
  if (states.includes("fuel-cut")) return null;
  if (states.includes("idle")) return "idle";
  if (states.includes("full-load")) return "full load";
  return "part load";
}
