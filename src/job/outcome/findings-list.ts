/** Findings and explanations as they stand in the result. */
import type { Weighed } from "../../findings/index.ts";
import type { Prepared } from "../../tally/index.ts";
import type { Explanation, Finding } from "../result.ts";
import type { CommonAnswer } from "./air.ts";
import { evidenceFor, speaksOf } from "./evidence.ts";
import { findingSizes } from "./finding-sizes.ts";
import { round } from "./points.ts";

/** An explanation below this goes into othersProbability. */
const LISTED = 0.001;

export function findingsList(
  weighed: Weighed,
  prepared: Prepared,
  answer: CommonAnswer,
  firstRestsOn: readonly string[],
): { readonly finding: Finding; readonly speaks: string }[] {
  return weighed.causes.map((cause, rank) => {
    const told = evidenceFor(cause, prepared, answer);
    const evidence = told.map((t) => t.evidence);
    const shifted = evidence.flatMap((e) => (e.witness === null ? [] : [e.witness]));
    const restsOn = shifted.length === 0 ? [] : [...new Set<string>([...shifted, ...prepared.model.witnesses])];
    const finding: Finding = {
      cause: cause.cause.id,
      bank: cause.cause.bank,
      probability: round(cause.probability),
      priorProbability: round(cause.prior),
      bayesFactor: cause.bayesFactor === null ? null : round(cause.bayesFactor),
      sizes: findingSizes(cause, prepared.model),
      restsOn: rank === 0 ? [...restsOn, ...firstRestsOn] : restsOn,
      evidence,
    };
    return { finding, speaks: speaksOf(told, cause.bayesFactor) };
  });
}

export function explanationsList(weighed: Weighed): { explanations: Explanation[]; others: number } {
  const listed = weighed.explanations.filter((e) => e.probability >= LISTED);
  const explanations = listed.map((e) => ({
    causes: e.causes.map((c) => c.cause.id),
    probability: round(e.probability),
  }));
  const others = weighed.explanations.slice(listed.length).reduce((sum, e) => sum + e.probability, 0);
  return { explanations, others };
}
