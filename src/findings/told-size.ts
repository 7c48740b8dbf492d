/**
 * Quantiles of a size as they are told: the posterior, widened by how far a real fault may stray from its law.
 *
 * Equation    amount told = amount exp(s z), z ~ N(0, 1), as seven equally likely steps
 * Symbols     s `LAW_SPREAD`: sd of how strongly a real fault shows against its law (shape of a hole, place of a leak, how dirt lies)
 * Source      common practice, no source
 */
import type { Cause } from "./catalogue.ts";
import { type SizeNode, sizeQuantile } from "./size-nodes.ts";
import { reported } from "./size-scale.ts";

const LAW_SPREAD = 0.1;
/** middles of sevenths of the standard normal distribution [abramowitz1972] 26.2 */
const STEPS = [-1.465, -0.792, -0.366, 0, 0.366, 0.792, 1.465];

type Sized = { readonly cause: Cause; readonly nodes: readonly SizeNode[] };

/** In the unit of the catalogue. The middle stays where it is. */
export function toldQuantile({ cause, nodes }: Sized, p: number): number {
  if (p === 0.5) return reported(cause, sizeQuantile(nodes, p));
  const widened = nodes
    .flatMap((node) =>
      STEPS.map((z) => ({
        shape: node.shape,
        size: strayed(cause, node.size, Math.exp(LAW_SPREAD * z)),
        weight: node.weight / STEPS.length,
      })),
    )
    .sort((a, b) => a.size - b.size);
  return reported(cause, sizeQuantile(widened, p));
}

function strayed(cause: Cause, size: number, factor: number): number {
  return cause.kind === "ratio" ? size ** factor : size * factor;
}
