/** From the weighed tally to the result file and to what the page draws. */

import type { OperatingData } from "../../channels/index.ts";
import {
  excludedSizes,
  type FoundResult,
  inseparableCauses,
  sensitivities,
  type Weighed,
  type WeighedCause,
} from "../../findings/index.ts";
import type { Assumptions, Prepared } from "../../tally/index.ts";
import { cautionsAlways } from "../cautions.ts";
import type { CauseView, Outcome, ResultWarning, View } from "../result.ts";
import { commonAnswer } from "./air.ts";
import { assumptionsList, restsOnAssumptions } from "./assumptions-list.ts";
import { engineView } from "./engine-view.ts";
import { keepsItsOdds } from "./evidence.ts";
import { explanationsList, findingsList } from "./findings-list.ts";
import { madeViews } from "./made-views.ts";
import { nextChecks } from "./next-checks.ts";
import { notVisited } from "./not-visited.ts";
import { pointResults, round } from "./points.ts";
import { signatureViews } from "./signature-views.ts";
import { stationViews } from "./stations.ts";
import { verdictOf } from "./verdict.ts";
import { dangerLine, remarks } from "./warnings.ts";
import { waysOf, wayView } from "./ways.ts";

/** A way less probable than this is not told as one. */
const WAY_TOLD = 0.01;

export type OutcomeInput = {
  readonly toolVersion: string;
  readonly seed: number;
  readonly prepared: Prepared;
  readonly weighed: Weighed;
  readonly data: OperatingData;
  /** workshop checks entered; `weighed` holds them */
  readonly found: readonly FoundResult[];
  readonly assumptions: Assumptions;
  readonly recordings: readonly { readonly name: string; readonly sha256: string }[];
  readonly warnings: readonly ResultWarning[];
  /** made only when the view is looked at */
  readonly drawings: () => Pick<View, "timelines" | "channels" | "recognitionWarnings">;
};

export function makeOutcome(input: OutcomeInput): Outcome {
  const { prepared, weighed, data, found, assumptions } = input;
  const { model } = prepared;
  const answer = commonAnswer(weighed, prepared);
  const visibility = inseparableCauses(weighed);
  const verdict = verdictOf({ weighed, visibility, model, found });
  const next = nextChecks(weighed, prepared, found);
  const first = weighed.causes[0];
  const rested = first === undefined || model.witnesses.length < 2 ? [] : sensitivities(first, prepared);
  const listed = findingsList(
    weighed,
    prepared,
    answer,
    first === undefined ? [] : restsOnAssumptions(rested, first.probability),
  );
  const { explanations, others } = explanationsList(weighed);
  const draw = (): View => ({
    headline: verdict.headline,
    summary: verdict.summary,
    meansNot: verdict.meansNot,
    ways: waysOf(weighed, visibility)
      .filter((way) => way.probability >= WAY_TOLD)
      .map(wayView),
    engine: engineView(model.engine, assumptions),
    stations: stationViews(prepared, weighed, answer, visibility.invisible),
    causes: Object.fromEntries(
      listed.map(({ finding, speaks }, i) => [finding.cause, causeView(weighed.causes[i]!, speaks)]),
    ),
    signatures: model.witnesses.length < 2 ? [] : signatureViews(weighed, prepared, answer),
    ...input.drawings(),
    checks: next.views,
    made: madeViews(weighed, found),
    cautions: cautionsAlways(),
  });
  let drawn: View | null = null;
  return {
    result: {
      format: "airtally-result/1",
      toolVersion: input.toolVersion,
      seed: input.seed,
      answer: verdict.answer,
      warning: dangerLine(verdict.leading, prepared),
      healthyProbability: round(weighed.healthy.probability),
      unexplainedProbability: round(weighed.unexplained.probability),
      othersProbability: round(others),
      findings: listed.map(({ finding }) => finding),
      explanations,
      inseparable: visibility.groups
        .map((group) => [...new Set(group.map((c) => c.cause.id))])
        .filter((ids) => ids.length > 1),
      excluded: weighed.causes.flatMap((cause) => {
        const sizes =
          visibility.invisible.includes(cause) && keepsItsOdds(cause.bayesFactor) ? null : excludedSizes(cause);
        return sizes === null
          ? []
          : [
              {
                cause: sizes.cause,
                beyond: [round(sizes.beyond[0]), round(sizes.beyond[1])] as const,
                unit: sizes.unit,
              },
            ];
      }),
      nextChecks: next.list,
      operatingPoints: pointResults(model, answer),
      meterCurve: null,
      breathing: null,
      assumptions: assumptionsList(model, assumptions, rested, first?.cause.title ?? null),
      notVisited: notVisited(model, data),
      recordings: input.recordings,
      warnings: [...remarks(prepared, weighed), ...input.warnings],
    },
    get view() {
      drawn ??= draw();
      return drawn;
    },
  };
}

function causeView({ cause }: WeighedCause, speaks: string): CauseView {
  return { id: cause.id, title: cause.title, station: cause.station, speaks };
}
