/**
 * Probabilities of healthy, every cause, every pair of causes, and "not in the catalogue".
 *
 * Equation    p_h proportional to prior_h x evidence_h x likelihood_h(workshop checks), summing to one
 * Validity    one cause or two; a cause that this engine cannot have takes no part, one that this recording cannot see keeps
 *             its prior odds
 */
import { logEvidence, type Prepared } from "../tally/index.ts";
import { type Cause, PRIOR_HEALTHY, PRIOR_PAIRS, PRIOR_UNEXPLAINED } from "./catalogue.ts";
import { type Known, NOTHING_KNOWN } from "./known.ts";
import { logSum } from "./log-sum.ts";
import { possibleCauses } from "./possible-causes.ts";
import { type CandidatePair, screenPairs } from "./screen-pairs.ts";
import { laySizes, type SizeGrid } from "./size-grid.ts";
import { mixNodes, type SizeNode } from "./size-nodes.ts";
import { weighUnexplained } from "./unexplained.ts";
import { type CauseWeight, weighCause } from "./weigh-cause.ts";
import { exactCorrection, type PairWeight, weighPair } from "./weigh-pair.ts";

export type WeighedCause = {
  readonly cause: Cause;
  readonly prior: number;
  /** that this cause is at work, alone or with another */
  readonly probability: number;
  /** how much better it foretells the recording alone than a healthy engine does: 1 where it is not seen; null where healthy is impossible */
  readonly bayesFactor: number | null;
  /** posterior of the size over all explanations the cause is part of */
  readonly nodes: readonly SizeNode[];
  readonly profile: CauseWeight["profile"];
};

/** One cause or two, as a whole explanation. */
export type WeighedExplanation = {
  readonly causes: readonly { readonly cause: Cause; readonly nodes: readonly SizeNode[] }[];
  readonly prior: number;
  readonly probability: number;
};

export type Weighed = {
  readonly healthy: { readonly prior: number; readonly probability: number };
  readonly unexplained: { readonly prior: number; readonly probability: number };
  /** most probable first */
  readonly causes: readonly WeighedCause[];
  /** most probable first; with healthy and unexplained (and at most `screened`) they sum to one */
  readonly explanations: readonly WeighedExplanation[];
  /** most that pairs left out of the integration could have had */
  readonly screened: number;
  readonly grid: SizeGrid;
};

type Entry = { readonly logPrior: number; readonly logRatio: number; readonly weight: CauseWeight | PairWeight };

export function weighAll(prepared: Prepared, known: Known = NOTHING_KNOWN): Weighed {
  const possible = possibleCauses(prepared.model);
  const weights = possible.reduce((sum, cause) => sum + cause.weight, 0);
  const share = (cause: Cause) => cause.weight / weights;
  const faulty = 1 - PRIOR_HEALTHY - PRIOR_UNEXPLAINED;
  const grid = laySizes(possible, prepared);
  const logHealthy = logEvidence(prepared, null);
  const healthy = Math.log(PRIOR_HEALTHY) + known([]);
  const unexplained = Math.log(PRIOR_UNEXPLAINED) + weighUnexplained(prepared) + known("unexplained");
  const singles: Entry[] = possible.map((cause) => {
    const weight = weighCause(cause, grid.parts.get(cause)!, known);
    return { logPrior: Math.log(faulty * (1 - PRIOR_PAIRS) * share(cause)), logRatio: weight.logRatio, weight };
  });
  const soFar = logSum([healthy, unexplained, ...singles.map(total)]);
  const { kept, left } = screenPairs(pairsOf(possible, faulty * PRIOR_PAIRS, share), grid, soFar);
  const pairs: Entry[] = kept.map(({ causes, logPrior }) => {
    const weight = weighPair(causes[0], causes[1], grid, known);
    return { logPrior, logRatio: weight.logRatio, weight };
  });
  const entries = [...singles, ...correct(pairs, grid, prepared, logHealthy, logSum([soFar, ...pairs.map(total)]))];
  const all = logSum([healthy, unexplained, ...entries.map(total)]);
  const explanations = entries.map((entry) => explained(entry, all)).sort((a, b) => b.probability - a.probability);
  const chance = { healthy: Math.exp(healthy - all), unexplained: Math.exp(unexplained - all) };
  return {
    healthy: { prior: PRIOR_HEALTHY, probability: chance.healthy },
    unexplained: { prior: PRIOR_UNEXPLAINED, probability: chance.unexplained },
    causes: singles
      .map(({ weight }) => marginal(weight as CauseWeight, explanations, known([])))
      .sort((a, b) => b.probability - a.probability),
    explanations,
    screened: left,
    grid,
  };
}

const total = (entry: Entry) => entry.logPrior + entry.logRatio;

/** Two causes of different kinds; the prior of a pair goes with the product of theirs. */
function pairsOf(possible: readonly Cause[], prior: number, share: (cause: Cause) => number): CandidatePair[] {
  const pairs: { causes: readonly [Cause, Cause]; product: number }[] = [];
  possible.forEach((a, i) => {
    for (const b of possible.slice(i + 1))
      if (a.id !== b.id) pairs.push({ causes: [a, b], product: share(a) * share(b) });
  });
  const sum = pairs.reduce((s, p) => s + p.product, 0);
  return pairs.map(({ causes, product }) => ({ causes, logPrior: Math.log((prior * product) / sum) }));
}

/** Where something is not Gaussian, pairs that matter are set right by the exact evidence at their best sizes. */
function correct(pairs: Entry[], grid: SizeGrid, prepared: Prepared, logHealthy: number, all: number): Entry[] {
  if (!grid.corrected) return pairs;
  return pairs.map((entry) => {
    if (total(entry) - all < Math.log(MATTERS)) return entry;
    const correction = exactCorrection(entry.weight as PairWeight, grid, prepared, logHealthy);
    return { ...entry, logRatio: entry.logRatio + correction };
  });
}

const MATTERS = 1e-3;

function explained({ weight, logPrior, logRatio }: Entry, all: number): WeighedExplanation {
  const causes =
    "cause" in weight
      ? [{ cause: weight.cause, nodes: weight.nodes }]
      : weight.causes.map((cause, i) => ({ cause, nodes: weight.nodes[i]! }));
  return { causes, prior: Math.exp(logPrior), probability: Math.exp(logPrior + logRatio - all) };
}

function marginal(
  { cause, logRatio, nodes, profile }: CauseWeight,
  explanations: readonly WeighedExplanation[],
  logHealthy: number,
): WeighedCause {
  const own = explanations.filter((e) => e.causes.some((c) => c.cause === cause));
  const probability = own.reduce((sum, e) => sum + e.probability, 0);
  const prior = own.reduce((sum, e) => sum + e.prior, 0);
  const factor = Math.exp(logRatio - logHealthy);
  return {
    cause,
    prior,
    probability,
    bayesFactor: Number.isFinite(factor) ? factor : null,
    nodes:
      probability > 0
        ? mixNodes(own.map((e) => ({ nodes: e.causes.find((c) => c.cause === cause)!.nodes, share: e.probability })))
        : nodes,
    profile,
  };
}
