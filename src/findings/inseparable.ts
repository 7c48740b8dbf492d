/**
 * Causes that this recording cannot tell apart.
 *
 * Equation    d2(i, j) = min over sizes s of j of (delta_i - c delta_j(s))' P~ (delta_i - c delta_j(s)),
 *             P~ = P - P Phi H^-1 Phi' P;  half of d2 is the expected ln of the Bayes factor between them
 * Symbols     delta predicted shift of all witnesses | c 0.55 to 1.8, fine adjustment of the size between the sizes tried
 * Rule        d2 < 2.2: not told apart. Even where i is true a Bayes factor below three is expected between them, which is not
 *             worth more than a bare mention [kass1995]. A cause for which less than tenfold against healthy is expected
 *             (delta' P~ delta < 4.6) is not visible here, which is said elsewhere
 */
import { choleskySolve, dot } from "../numerics/index.ts";
import { applyPrecision, type Prepared } from "../tally/index.ts";
import type { Prediction } from "./cause.ts";
import { sidesOf, sizeAt } from "./size-scale.ts";
import type { Weighed, WeighedCause } from "./weigh-all.ts";
import { sizeQuantile } from "./weigh-cause.ts";

const TOLD_APART = 2 * Math.log(3);
/** the same for being seen at all: tenfold against healthy */
const SEEN = 2 * Math.log(10);
const SIZES_TRIED = 5;

type Candidate = {
  readonly delta: Float64Array;
  readonly weighed: Float64Array;
  readonly norm: number;
  readonly standing: number;
};

export type Visibility = { readonly groups: readonly (readonly string[])[]; readonly invisible: readonly string[] };

export function inseparableCauses(weighed: Weighed, prepared: Prepared): Visibility {
  const own = weighed.causes.map((cause) => candidate(ownPrediction(cause, prepared), prepared));
  const tried = weighed.causes.map((cause) => sizesOf(cause, prepared));
  const invisible = weighed.causes.filter((_, i) => own[i]!.norm + own[i]!.standing < SEEN).map((c) => c.cause.id);
  const alike = (i: number, j: number) => tried[j]!.some((other) => distance(own[i]!, other) < TOLD_APART);
  const groups: string[][] = [];
  const taken = new Set<number>();
  weighed.causes.forEach((cause, i) => {
    if (taken.has(i) || own[i]!.norm < SEEN) return;
    const members = weighed.causes
      .map((_, j) => j)
      .filter((j) => j !== i && !taken.has(j) && own[j]!.norm >= SEEN && alike(i, j));
    if (members.length === 0) return;
    for (const m of [i, ...members]) taken.add(m);
    groups.push([cause.cause.id, ...members.map((j) => weighed.causes[j]!.cause.id)]);
  });
  return { groups, invisible };
}

/** The cause at the size that fits best here. */
export function ownPrediction(cause: WeighedCause, prepared: Prepared): Prediction {
  const best = cause.nodes.reduce((a, b) => (b.weight > a.weight ? b : a));
  return cause.cause.law.predict(
    prepared.model,
    sizeQuantile(cause.nodes.filter((n) => n.shape === best.shape).map(scaled(cause, best.shape)), 0.5),
    best.shape,
  );
}

/** Nodes of one shape, weights brought to sum to one. */
function scaled(cause: WeighedCause, shape: number) {
  const total = cause.nodes.filter((n) => n.shape === shape).reduce((sum, n) => sum + n.weight, 0);
  return (node: WeighedCause["nodes"][number]) => ({ ...node, weight: node.weight / total });
}

function sizesOf({ cause }: WeighedCause, prepared: Prepared): Candidate[] {
  const out: Candidate[] = [];
  for (const side of sidesOf(cause)) {
    for (const shape of cause.law.shapes(prepared.model)) {
      for (let n = 0; n < SIZES_TRIED; n++) {
        const t = side.low + ((side.high - side.low) * n) / (SIZES_TRIED - 1);
        out.push(candidate(cause.law.predict(prepared.model, sizeAt(cause, side.sign, t), shape.value), prepared));
      }
    }
  }
  return out;
}

/** Effect and its image under P~. The norm counts what the standing observations would show too: they make a cause visible. */
function candidate(prediction: Prediction, prepared: Prepared): Candidate {
  const { model, factor } = prepared;
  const delta = prediction.effect;
  const weighed = applyPrecision(prepared, delta);
  const b = model.columns;
  const w = model.witnesses.length;
  const projected = new Float64Array(b);
  for (let row = 0; row < delta.length; row++) {
    if (weighed[row] === 0) continue;
    for (const c of model.moving[row % w]!) projected[c] = projected[c]! + model.basis[row * b + c]! * weighed[row]!;
  }
  choleskySolve(factor, b, projected);
  const explained = new Float64Array(delta.length);
  for (let row = 0; row < delta.length; row++) {
    let sum = 0;
    for (const c of model.moving[row % w]!) sum += model.basis[row * b + c]! * projected[c]!;
    explained[row] = model.present[row] === 1 ? sum : 0;
  }
  const taken = applyPrecision(prepared, explained);
  for (let row = 0; row < delta.length; row++) weighed[row] = weighed[row]! - taken[row]!;
  return { delta, weighed, norm: dot(delta, weighed), standing: standingNorm(prediction, prepared) };
}

function standingNorm(prediction: Prediction, { model }: Prepared): number {
  return model.standing.reduce((sum, observation, i) => {
    const believed = observation.basis.reduce((total, b) => total + b * b, 0);
    return sum + (prediction.standing[i] ?? 0) ** 2 / (observation.variance + believed);
  }, 0);
}

function distance(own: Candidate, other: Candidate): number {
  const cross = dot(own.delta, other.weighed);
  const c = other.norm > 0 ? Math.min(1.8, Math.max(0.55, cross / other.norm)) : 1;
  // What the standing observations show of one and not of the other tells them apart too.
  const standing = (Math.sqrt(own.standing) - c * Math.sqrt(other.standing)) ** 2;
  return own.norm - 2 * c * cross + c * c * other.norm + standing;
}
