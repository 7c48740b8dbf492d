/** All that may be the case, as checks see it: healthy, each explanation with the sizes of its faults, and "unexplained". */
import type { DefiniteFault } from "../known.ts";
import type { SizeNode } from "../size-nodes.ts";
import type { Weighed } from "../weigh-all.ts";

export type SizedFault = {
  readonly cause: string;
  readonly bank: 1 | 2 | null;
  readonly nodes: readonly Pick<SizeNode, "size" | "weight">[];
};

export type Alternative = { readonly faults: readonly SizedFault[] | "unexplained"; readonly probability: number };

export function alternativesOf(weighed: Weighed): Alternative[] {
  return [
    { faults: [], probability: weighed.healthy.probability },
    { faults: "unexplained", probability: weighed.unexplained.probability },
    ...weighed.explanations.map(({ causes, probability }) => ({
      probability,
      faults: causes.map(({ cause, nodes }) => ({ cause: cause.id, bank: cause.bank, nodes })),
    })),
  ];
}

/** Mean of a law over the sizes of faults, every combination of them. */
export function overSizes(
  faults: readonly SizedFault[],
  law: (faults: readonly DefiniteFault[]) => Float64Array,
): Float64Array {
  let mean: Float64Array | null = null;
  const visit = (k: number, chosen: readonly DefiniteFault[], share: number) => {
    const fault = faults[k];
    if (fault !== undefined) {
      const { cause, bank, nodes } = fault;
      const total = nodes.reduce((sum, node) => sum + node.weight, 0);
      for (const { size, weight } of nodes) visit(k + 1, [...chosen, { cause, bank, size }], (share * weight) / total);
      return;
    }
    const own = law(chosen);
    if (mean === null) mean = new Float64Array(own.length);
    for (let o = 0; o < own.length; o++) mean[o] = mean[o]! + share * own[o]!;
  };
  visit(0, [], 1);
  return mean!;
}

/** sizes that stand for all of a fault alone, and of each of two together */
const ALONE = 16;
const TOGETHER = 6;

/** The faults that a law sees, each with a few sizes. */
export function condensed(faults: readonly SizedFault[], touches: (cause: string) => boolean): readonly SizedFault[] {
  const touched = faults.filter((fault) => touches(fault.cause));
  const most = touched.length > 1 ? TOGETHER : ALONE;
  return touched.map((fault) =>
    fault.nodes.length <= most ? fault : { ...fault, nodes: fewNodes(fault.nodes, most) },
  );
}

/** Stretches of about equal weight, each by its weightiest node. */
function fewNodes(nodes: SizedFault["nodes"], most: number): SizedFault["nodes"] {
  const total = nodes.reduce((sum, node) => sum + node.weight, 0);
  const groups: { size: number; weight: number; best: number }[] = [];
  let below = 0;
  for (const { size, weight } of nodes) {
    const at = Math.min(most - 1, Math.floor((most * (below + weight / 2)) / total));
    const group = groups[at];
    if (group === undefined) groups[at] = { size, weight, best: weight };
    else {
      group.weight += weight;
      if (weight > group.best) Object.assign(group, { size, best: weight });
    }
    below += weight;
  }
  return groups.filter((group) => group !== undefined);
}
