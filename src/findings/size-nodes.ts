/** The posterior of a size as weighted nodes, and its quantiles. */

/** A size (SI) that the cause may have, with its share of the cause's posterior. */
export type SizeNode = { readonly size: number; readonly shape: number; readonly weight: number };

/** Nodes of several explanations of which the cause is part, each with the explanation's share. */
export function mixNodes(
  parts: readonly { readonly nodes: readonly SizeNode[]; readonly share: number }[],
): SizeNode[] {
  const total = parts.reduce((sum, p) => sum + p.share, 0);
  return parts
    .flatMap(({ nodes, share }) => nodes.map((node) => ({ ...node, weight: (node.weight * share) / total })))
    .filter((node) => node.weight > 1e-7)
    .sort((a, b) => a.size - b.size);
}

/** Quantile of the size among nodes, each node standing for the stretch half-way to its neighbours. */
export function sizeQuantile(nodes: readonly SizeNode[], p: number): number {
  let below = 0;
  for (let i = 0; i < nodes.length; i++) {
    const { size, weight } = nodes[i]!;
    if (below + weight >= p || i === nodes.length - 1) {
      const left = i > 0 ? (nodes[i - 1]!.size + size) / 2 : size;
      const right = i + 1 < nodes.length ? (size + nodes[i + 1]!.size) / 2 : size;
      const part = weight > 0 ? Math.min(1, Math.max(0, (p - below) / weight)) : 0.5;
      return left + (right - left) * part;
    }
    below += weight;
  }
  return Number.NaN;
}
