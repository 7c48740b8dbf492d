/** Causes and explanations at the sizes that fit best here. */
import type { Prepared } from "../tally/index.ts";
import type { Prediction } from "./cause.ts";
import { together } from "./evidence-of.ts";
import { type SizeNode, sizeQuantile } from "./size-nodes.ts";
import type { WeighedCause, WeighedExplanation } from "./weigh-all.ts";

type Sized = Pick<WeighedCause, "cause" | "nodes">;

export function ownPrediction(sized: Sized, prepared: Prepared): Prediction {
  const { size, shape } = ownSize(sized);
  return sized.cause.law.predict(prepared.model, size, shape);
}

export function explanationPrediction({ causes }: WeighedExplanation, prepared: Prepared): Prediction {
  const predictions = causes.map((sized) => ownPrediction(sized, prepared));
  return predictions.reduce((one, other) => together(one, other, prepared.model.witnesses.length));
}

/** The median size of the form and side that weigh most. */
export function ownSize({ cause, nodes }: Sized): { readonly size: number; readonly shape: number } {
  const best = nodes.reduce((a, b) => (b.weight > a.weight ? b : a));
  const none = cause.kind === "ratio" ? 1 : 0;
  const alike = nodes.filter((n) => n.shape === best.shape && n.size > none === best.size > none);
  return { size: sizeQuantile(normalised(alike), 0.5), shape: best.shape };
}

function normalised(nodes: readonly SizeNode[]): SizeNode[] {
  const total = nodes.reduce((sum, n) => sum + n.weight, 0);
  return nodes.map((n) => ({ ...n, weight: n.weight / total }));
}
