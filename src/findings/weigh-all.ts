/**
 * Probabilities of healthy, every cause and "not in the catalogue".
 *
 * Equation    p_h proportional to prior_h x evidence_h, summing to one
 * Validity    single causes; a cause that this engine cannot have takes no part, one that this recording cannot see keeps
 *             its prior odds
 */
import { logEvidence, type Prepared } from "../tally/index.ts";
import { PRIOR_HEALTHY, PRIOR_UNEXPLAINED } from "./catalogue.ts";
import { possibleCauses } from "./possible-causes.ts";
import { weighUnexplained } from "./unexplained.ts";
import { type CauseWeight, logSum, weighCause } from "./weigh-cause.ts";

export type WeighedCause = CauseWeight & {
  readonly prior: number;
  readonly probability: number;
  /** evidence against healthy; null where healthy is impossible */
  readonly bayesFactor: number | null;
};

export type Weighed = {
  readonly healthy: { readonly prior: number; readonly probability: number; readonly logEvidence: number };
  readonly unexplained: { readonly prior: number; readonly probability: number };
  /** most probable first */
  readonly causes: readonly WeighedCause[];
};

export function weighAll(prepared: Prepared): Weighed {
  const possible = possibleCauses(prepared.model);
  const weights = possible.reduce((sum, cause) => sum + cause.weight, 0);
  const logHealthy = logEvidence(prepared, null);
  const logUnexplained = weighUnexplained(prepared);
  const entries = possible.map((cause) => ({
    weight: weighCause(cause, prepared),
    prior: ((1 - PRIOR_HEALTHY - PRIOR_UNEXPLAINED) * cause.weight) / weights,
  }));
  const total = logSum([
    Math.log(PRIOR_HEALTHY) + logHealthy,
    Math.log(PRIOR_UNEXPLAINED) + logUnexplained,
    ...entries.map((e) => Math.log(e.prior) + e.weight.logEvidence),
  ]);
  const causes = entries
    .map(({ weight, prior }) => {
      const factor = Math.exp(weight.logEvidence - logHealthy);
      return {
        ...weight,
        prior,
        probability: Math.exp(Math.log(prior) + weight.logEvidence - total),
        bayesFactor: Number.isFinite(factor) ? factor : null,
      };
    })
    .sort((a, b) => b.probability - a.probability);
  return {
    healthy: {
      prior: PRIOR_HEALTHY,
      probability: Math.exp(Math.log(PRIOR_HEALTHY) + logHealthy - total),
      logEvidence: logHealthy,
    },
    unexplained: {
      prior: PRIOR_UNEXPLAINED,
      probability: Math.exp(Math.log(PRIOR_UNEXPLAINED) + logUnexplained - total),
    },
    causes,
  };
}
