/** What a fit comes to, in a sentence, and what must be said beside it. */
import { type BenchPoint, type CurveFit, curveFunctions } from "../../meters/index.ts";
import type { Failure } from "../../quantities/index.ts";
import { figure, listed } from "../outcome/words.ts";
import type { BenchPoints } from "./bench-input/read-bench-points.ts";
import type { FitSheet } from "./result/meter-result-schema.ts";

type Warning = FitSheet["warnings"][number];

/** points whose flow is at least this share of the largest: near zero flow a relative departure has no meaning */
const TOLD_FROM = 0.02;
const FAR_RESIDUAL = 3;
const SCATTER_TOLD_FROM = 1.3;
const RIVAL_FROM = 0.2;

export function fitHeadline(fit: CurveFit, points: readonly BenchPoint[]): string {
  const { flowOf } = curveFunctions(fit.chosen.curve);
  const largest = Math.max(...points.map((p) => Math.abs(p.flow)));
  const told = points.filter((p) => Math.abs(p.flow) >= TOLD_FROM * largest);
  const squares = told.map((p) => (flowOf(p.signal) / p.flow - 1) ** 2);
  const scatter = 100 * Math.sqrt(squares.reduce((sum, s) => sum + s, 0) / told.length);
  const law = fit.chosen.name === "King's law" ? fit.chosen.name : `A ${fit.chosen.name}`.replace("A e", "An e");
  return `${law} fits ${points.length} points to ${figure(scatter)} % of flow.`;
}

export function fitWarnings(
  read: BenchPoints,
  { assumedSd, fit }: { readonly assumedSd: boolean; readonly fit: CurveFit },
  unusable: Failure | null,
): Warning[] {
  const warnings: Warning[] = [];
  const add = (code: string, text: string) => warnings.push({ code, text });
  if (unusable !== null) add("not-a-meter-curve", `As a meter's curve it would be refused: ${unusable.message}`);
  if (assumedSd)
    add(
      "uncertainty-assumed",
      "The points state no uncertainty: 1 % of the flow is assumed, and 0.2 % of the largest at least (common practice, no source). The width of the band rests on it.",
    );
  if (fit.birgeRatio >= SCATTER_TOLD_FROM)
    add(
      "scatter",
      `The points scatter ${figure(fit.birgeRatio)} times as much as their uncertainties say, about whichever law; the band is widened by as much.`,
    );
  const rivals = fit.candidates.slice(1).filter((c) => c.weight >= RIVAL_FROM * fit.chosen.weight);
  if (rivals.length > 0)
    add("law-open", `The points do not decide between ${listed([fit.chosen, ...rivals].map((c) => c.name))}.`);
  const far = fit.chosen.residuals.flatMap((r, i) => (Math.abs(r) > FAR_RESIDUAL * fit.birgeRatio ? [i + 1] : []));
  if (far.length > 0)
    add(
      "point-apart",
      `Point ${listed(far.map(String))} ${far.length === 1 ? "stands" : "stand"} more than ${FAR_RESIDUAL} standard deviations from the curve: look at ${far.length === 1 ? "it" : "them"} again.`,
    );
  if (read.at === null)
    add(
      "air-not-stated",
      "The air at the meter is not stated. A wire or film does not need it; the curve of a vane, or of a vortex meter given as mass, holds in that air alone.",
    );
  return warnings;
}
