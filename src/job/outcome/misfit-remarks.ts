/** Where what was seen fits nothing in the catalogue, and where it scatters more than it should: remarks with numbers. */
import { explanationPrediction, misfit, type Prediction, strayOf, type Weighed } from "../../findings/index.ts";
import type { Prepared, TallyModel } from "../../tally/index.ts";
import type { ResultWarning } from "../result.ts";
import { placeOf, signedPercent, WITNESS_NAMES } from "./words.ts";

/** chance of "not in the catalogue" from which it is told where */
const WORTH_TELLING = 0.2;
/** chance of so much scatter below which noise or spreads must be understated */
const TOO_MUCH = 1e-3;

export function unexplainedRemark(prepared: Prepared, weighed: Weighed): ResultWarning | null {
  if (weighed.unexplained.probability <= WORTH_TELLING) return null;
  const stray = strayOf(prepared);
  if (stray === null) return null;
  const { model } = prepared;
  const said = (["idle", "fuel-cut", "full-load"] as const).map((state) =>
    model.points.flatMap((p, i) => (p.states.includes(state) ? [i] : [])),
  );
  const rest = model.points.map((_, i) => i).filter((i) => !said.some((points) => points.includes(i)));
  const clear = (i: number) => Math.abs(stray.mean[i]!) / stray.sd[i]!;
  const places = [...said, rest].filter((points) => points.length > 0);
  const strongest = (points: readonly number[]) => points.reduce((a, b) => (clear(b) > clear(a) ? b : a));
  const most = places.map(strongest).reduce((a, b) => (clear(b) > clear(a) ? b : a));
  return {
    code: "unexplained",
    text: `A good part of what was seen fits nothing in the catalogue: ${WITNESS_NAMES[stray.witness]} departs by itself, most ${placeOf(model, [most])} (${signedPercent(stray.mean[most]!)} ± ${(164.5 * stray.sd[most]!).toFixed(1)}). Mistrust the findings and look at the tally there.`,
  };
}

export function scatterRemark(prepared: Prepared, weighed: Weighed): ResultWarning | null {
  const { statistic, degrees, probability } = misfit(bestPrediction(prepared, weighed), prepared);
  if (probability >= TOO_MUCH) return null;
  return {
    code: "scatter",
    text: `The witnesses scatter about ${Math.sqrt(statistic / degrees).toFixed(1)} times as much as their stated uncertainty allows, under the best explanation too (chi-square ${statistic.toFixed(0)} with ${degrees} degrees of freedom). Chances below are surer than they should be: look for lagging channels, a loose plug or a second fault.`,
  };
}

function bestPrediction(prepared: Prepared, weighed: Weighed): Prediction {
  const best = weighed.explanations[0];
  if (best === undefined || best.probability < weighed.healthy.probability) return nothing(prepared.model);
  return explanationPrediction(best, prepared);
}

function nothing(model: TallyModel): Prediction {
  return {
    effect: new Float64Array(model.y.length),
    response: null,
    logAir: null,
    standing: model.standing.map(() => 0),
  };
}
