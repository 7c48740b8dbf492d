/**
 * Quantities that must keep their sign: recirculation at the nodes of its map, and the air that a trim at its limit only
 * bounds. Each is a linear form of the unknowns, t = constant - (what the shift takes) + form' beta + noise.
 */
import { logOrthantProbability, type OrthantMoments, orthantMoments } from "../numerics/index.ts";
import type { PointAlgebra } from "./point-algebra.ts";
import type { TallyModel } from "./tally-model.ts";

const MOST_BOUNDS = 12;

export type OneSided = {
  /** T rows of B numbers */
  readonly forms: readonly Float64Array[];
  readonly constants: Float64Array;
  /** per form: entries (row of K*W, factor) by which a shift changes it */
  readonly shiftTerms: readonly (readonly { readonly row: number; readonly factor: number }[])[];
  /** T*T posterior covariance of t */
  readonly covariance: Float64Array;
  /** T*B: covariance of t with beta */
  readonly cross: readonly Float64Array[];
  /** ln P(recirculation >= 0) before looking: the normaliser of its cut prior */
  readonly logPrior: number;
};

export function oneSidedForms(
  model: TallyModel,
  algebra: PointAlgebra,
  inverse: Float64Array | null,
  response: Float64Array | null,
  w: number,
): OneSided {
  const b = model.columns;
  const forms: Float64Array[] = [...model.nonNegative];
  const constants: number[] = forms.map(() => 0);
  const shiftTerms: { row: number; factor: number }[][] = forms.map(() => []);
  const extra: number[] = forms.map(() => 0);
  const bounds = spread(model, algebra);
  for (const bound of bounds) {
    const { point: k, witness: j, sign } = bound;
    const a = response === null ? 1 : response[k * w + j]!;
    const form = new Float64Array(b);
    let constant = -sign * bound.value;
    const terms: { row: number; factor: number }[] = [{ row: k * w + j, factor: sign }];
    for (let c = 0; c < b; c++) form[c] = sign * model.basis[(k * w + j) * b + c]!;
    for (let q = 0; q < w; q++) {
      const weight = algebra.weights[k * w + q]! * a;
      if (weight === 0) continue;
      constant += sign * weight * model.y[k * w + q]!;
      terms.push({ row: k * w + q, factor: -sign * weight });
      for (let c = 0; c < b; c++) form[c] = form[c]! - sign * weight * model.basis[(k * w + q) * b + c]!;
    }
    forms.push(form);
    constants.push(constant);
    shiftTerms.push(terms);
    extra.push(
      (a * a) / algebra.airPrecision[k]! + bound.variance + model.discrepancy[j]! + model.assumptions.pointNoise ** 2,
    );
  }
  const cross = inverse === null ? [] : forms.map((form) => times(inverse, form));
  const covariance = gram(forms, cross, extra);
  shareAir(covariance, bounds, model, algebra, response);
  return {
    forms,
    constants: Float64Array.from(constants),
    shiftTerms,
    covariance,
    cross,
    logPrior: priorOf(model),
  };
}

/** Bounds of one point (two banks, a meter and a trim) rest on the same common answer: its error is one error. */
function shareAir(
  covariance: Float64Array,
  bounds: TallyModel["bounds"],
  model: TallyModel,
  algebra: PointAlgebra,
  response: Float64Array | null,
): void {
  const n = model.nonNegative.length + bounds.length;
  const w = model.witnesses.length;
  const follows = ({ point, witness, sign }: TallyModel["bounds"][number]) =>
    sign * (response === null ? 1 : response[point * w + witness]!);
  bounds.forEach((one, i) => {
    bounds.forEach((other, j) => {
      if (i === j || one.point !== other.point) return;
      const at = (model.nonNegative.length + i) * n + model.nonNegative.length + j;
      covariance[at] = covariance[at]! + (follows(one) * follows(other)) / algebra.airPrecision[one.point]!;
    });
  });
}

export function logSignsKept(oneSided: OneSided, beta: Float64Array, shift: Float64Array | null): number {
  if (oneSided.forms.length === 0) return 0;
  return logOrthantProbability(meansOf(oneSided, beta, shift), oneSided.covariance) - oneSided.logPrior;
}

export function signMoments(
  oneSided: OneSided,
  beta: Float64Array,
  shift: Float64Array | null,
): { means: Float64Array; cut: OrthantMoments } {
  const means = meansOf(oneSided, beta, shift);
  return { means, cut: orthantMoments(means, oneSided.covariance) };
}

function meansOf(oneSided: OneSided, beta: Float64Array, shift: Float64Array | null): Float64Array {
  return Float64Array.from(oneSided.forms, (form, t) => {
    let value = oneSided.constants[t]!;
    for (let c = 0; c < beta.length; c++) value += form[c]! * beta[c]!;
    if (shift !== null) for (const { row, factor } of oneSided.shiftTerms[t]!) value += factor * shift[row]!;
    return value;
  });
}

/** At most a dozen bounds, spread over the recording, each with another witness at its point. */
function spread(model: TallyModel, algebra: PointAlgebra): TallyModel["bounds"] {
  const usable = model.bounds.filter((bound) => algebra.airPrecision[bound.point]! > 0);
  if (usable.length <= MOST_BOUNDS) return usable;
  return Array.from(
    { length: MOST_BOUNDS },
    (_, i) => usable[Math.round((i * (usable.length - 1)) / (MOST_BOUNDS - 1))]!,
  );
}

function priorOf(model: TallyModel): number {
  const n = model.nonNegative.length;
  if (n === 0) return 0;
  return logOrthantProbability(new Float64Array(n), gram(model.nonNegative, model.nonNegative, []));
}

function gram(forms: readonly Float64Array[], cross: readonly Float64Array[], extra: readonly number[]): Float64Array {
  const n = forms.length;
  const out = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      let sum = 0;
      for (let c = 0; c < forms[i]!.length; c++) sum += forms[i]![c]! * cross[j]![c]!;
      out[i * n + j] = sum;
    }
    // A hair of independent noise keeps the covariance positive definite where two forms nearly coincide.
    out[i * n + i] = out[i * n + i]! * (1 + 1e-9) + (extra[i] ?? 0);
  }
  return out;
}

function times(matrix: Float64Array, x: Float64Array): Float64Array {
  const n = x.length;
  return Float64Array.from({ length: n }, (_, i) => {
    let sum = 0;
    for (let j = 0; j < n; j++) sum += matrix[i * n + j]! * x[j]!;
    return sum;
  });
}
