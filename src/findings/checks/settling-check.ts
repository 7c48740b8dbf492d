/**
 * How strongly a result already entered speaks for one answer against all others.
 *
 * Equation    ratio = [P(A)/sum_{e in A} p_e E_e(1/L)] / [P(not A)/sum_{e not in A} p_e E_e(1/L)]
 * Symbols     L likelihood of this one result | p_e, E_e probability and mean over sizes with every result entered. Dividing it
 *             out again (1/L) gives what was believed without it, so that each result is judged beside the others
 */
import type { Weighed } from "../weigh-all.ts";
import { type Alternative, alternativesOf, condensed, overSizes } from "./alternatives.ts";
import type { Faults } from "./check-law.ts";
import { checkById } from "./check-table.ts";
import { resultLikelihood } from "./found-likelihood.ts";
import type { FoundResult } from "./found-result.ts";
import { checkLaw } from "./law-of.ts";

export type Spoken = { readonly result: FoundResult; readonly ratio: number };

/** The likelihood ratio of each result for the cause (null: for healthy) against everything else, strongest first. */
export function spokenFor(cause: string | null, weighed: Weighed, found: readonly FoundResult[]): Spoken[] {
  const alternatives = alternativesOf(weighed);
  const belongs = ({ faults }: Alternative) =>
    faults !== "unexplained" && (cause === null ? faults.length === 0 : faults.some((f) => f.cause === cause));
  return found
    .map((result) => {
      const law = checkLaw(checkById(result.check)!);
      const likelihood = resultLikelihood(result);
      const inverse = (faults: Faults) => Float64Array.of(1 / likelihood(faults));
      const mean = (faults: Alternative["faults"]) =>
        (faults === "unexplained" ? inverse(faults) : overSizes(condensed(faults, law.touches), inverse))[0]!;
      const own = { now: 0, before: 0 };
      const rest = { now: 0, before: 0 };
      for (const alternative of alternatives) {
        const side = belongs(alternative) ? own : rest;
        side.now += alternative.probability;
        side.before += alternative.probability * mean(alternative.faults);
      }
      return { result, ratio: own.now / own.before / (rest.now / rest.before) };
    })
    .sort((a, b) => b.ratio - a.ratio);
}
