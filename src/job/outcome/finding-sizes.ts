/** The sizes that a result tells of a cause: its own and what else its law tells, each with its 90 % interval. */
import { type Cause, type SizeNode, sizeQuantile, toldQuantile, type WeighedCause } from "../../findings/index.ts";
import type { TallyModel } from "../../tally/index.ts";
import type { Size } from "../result.ts";
import { round } from "./points.ts";

type OtherSize = ReturnType<NonNullable<Cause["law"]["otherSizes"]>>[number];
type Sized = Pick<WeighedCause, "cause" | "nodes">;

export function findingSizes(sized: Sized, model: TallyModel): Size[] {
  const { cause, nodes } = sized;
  const at = (p: number) => round(toldQuantile(sized, p));
  const own: Size = { name: cause.sizeName, value: at(0.5), unit: cause.unit, low90: at(0.05), high90: at(0.95) };
  const told = nodes.map(({ size, shape }) => cause.law.otherSizes?.(model, size, shape) ?? []);
  const others = (told[0] ?? []).map((first, n) => {
    const values = nodes.map((node, k) => ({ ...node, size: told[k]![n]!.value })).sort((a, b) => a.size - b.size);
    const quantile = (p: number) => round(first.steps ? stepQuantile(values, p) : sizeQuantile(values, p));
    const { name, unit } = first;
    return { first, size: { name, value: quantile(0.5), unit, low90: quantile(0.05), high90: quantile(0.95) } };
  });
  const of = (wanted: (size: OtherSize) => boolean) => others.filter((o) => wanted(o.first)).map((o) => o.size);
  return [...of((o) => o.first === true), own, ...of((o) => o.first !== true)];
}

/** The least of the values that are taken whose share, with all below, reaches p. */
function stepQuantile(nodes: readonly SizeNode[], p: number): number {
  let below = 0;
  for (const { size, weight } of nodes) {
    below += weight;
    if (below >= p - 1e-9) return size;
  }
  return nodes[nodes.length - 1]?.size ?? Number.NaN;
}
