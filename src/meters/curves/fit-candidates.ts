/**
 * The laws that bench points are fitted with: how a parameter vector becomes a form, and where each fit starts.
 *
 * Each candidate lists starts found by linear least squares over a coarse grid of its nonlinear parameter, best first.
 */
import { linearLeastSquares } from "../../numerics/index.ts";
import { filmSignal } from "../hot-film/film-law.ts";
import type { CurveForm, FormKind } from "./curve-form.ts";

export type BenchPoint = {
  readonly signal: number;
  readonly flow: number;
  /** standard uncertainty of the reference flow */
  readonly flowSd: number;
  /** standard uncertainty of the signal; 0 where it is negligible */
  readonly signalSd?: number;
};

export type Candidate = {
  readonly name: string;
  readonly kind: FormKind;
  readonly parameters: readonly string[];
  readonly toForm: (p: ArrayLike<number>) => CurveForm;
  readonly start: (points: readonly BenchPoint[]) => number[] | null;
  /** whether the law is defined there; everywhere where absent */
  readonly holds?: (p: ArrayLike<number>) => boolean;
};

/** the largest leak of the film law; beyond it the signal is nil at any flow (hot-film/film-law.ts) */
const LARGEST_LEAK = 100;

const at = (p: ArrayLike<number>, i: number): number => p[i] ?? Number.NaN;

export const POWER: Candidate = {
  name: "power law",
  kind: "power",
  parameters: ["ln scale", "offset", "exponent"],
  toForm: (p) => ({ kind: "power", scale: Math.exp(at(p, 0)), offset: at(p, 1), exponent: at(p, 2) }),
  start: (points) => {
    const used = points.filter((p) => p.flow > 0);
    const low = Math.min(...points.map((p) => p.signal));
    const span = Math.max(...points.map((p) => p.signal)) - low;
    return bestStart([0.02, 0.1, 0.3, 1, 3], (share) => {
      const offset = low - share * span;
      const line = straightLine(
        used,
        (p) => Math.log(p.signal - offset),
        (p) => Math.log(p.flow),
        (p) => p.flow / p.flowSd,
      );
      return line === null ? null : { start: [line.intercept, offset, line.slope], misfit: line.misfit };
    });
  },
};

export const KING: Candidate = {
  name: "King's law",
  kind: "king",
  parameters: ["still", "ln slope", "exponent"],
  toForm: (p) => ({ kind: "king", still: at(p, 0), slope: Math.exp(at(p, 1)), exponent: at(p, 2) }),
  start: (points) => {
    const used = points.filter((p) => p.flow >= 0);
    return bestStart([0.3, 0.4, 0.5, 0.6, 0.75], (exponent) => {
      const line = straightLine(
        used,
        (p) => p.flow ** exponent,
        (p) => p.signal ** 2,
        () => 1,
      );
      if (line === null || line.slope <= 0) return null;
      return { start: [line.intercept, Math.log(line.slope), exponent], misfit: line.misfit };
    });
  },
};

export const EXPONENTIAL: Candidate = {
  name: "exponential",
  kind: "exponential",
  parameters: ["scale", "rate", "offset"],
  toForm: (p) => ({ kind: "exponential", scale: at(p, 0), rate: at(p, 1), offset: at(p, 2) }),
  start: (points) => {
    const signals = points.map((p) => p.signal);
    const span = Math.max(...signals) - Math.min(...signals);
    return bestStart([0.3, 1, 2, 3, 5, -0.3, -1, -2, -3, -5], (turns) => {
      const rate = turns / span;
      const line = straightLine(
        points,
        (p) => Math.exp(rate * p.signal),
        (p) => p.flow,
        (p) => 1 / p.flowSd,
      );
      return line === null ? null : { start: [line.slope, rate, line.intercept], misfit: line.misfit };
    });
  },
};

export const FILM = filmCandidate("film", (signal) => signal);
export const FILM_PERIOD = filmCandidate("film-period", (signal) => 1 / signal);

/** `levelOf` turns a signal into what is straight in the film's own: itself, or the frequency of a period. */
function filmCandidate(kind: "film" | "film-period", levelOf: (signal: number) => number): Candidate {
  return {
    name: "film law",
    kind,
    parameters: ["ln scale flow", "ln leak", "zero", "span"],
    toForm: (p) => ({
      kind,
      scaleFlow: Math.exp(at(p, 0)),
      leak: Math.exp(at(p, 1)),
      zero: at(p, 2),
      span: at(p, 3),
    }),
    holds: (p) => Math.exp(at(p, 1)) <= LARGEST_LEAK && Math.exp(at(p, 0)) > 0 && Number.isFinite(Math.exp(at(p, 0))),
    start: (points) => {
      const largest = Math.max(...points.map((p) => Math.abs(p.flow)));
      const grid = [0.1, 0.3, 1, 3].flatMap((flow) => [0.3, 1, 3].map((leak) => ({ scaleFlow: flow * largest, leak })));
      return bestStart(grid, (law) => {
        const line = straightLine(
          points,
          (p) => filmSignal(law, p.flow),
          (p) => levelOf(p.signal),
          () => 1,
        );
        if (line === null) return null;
        return {
          start: [Math.log(law.scaleFlow), Math.log(law.leak), line.intercept, line.slope],
          misfit: line.misfit,
        };
      });
    },
  };
}

export function polynomialCandidate(degree: number, domain: readonly [number, number]): Candidate {
  const centre = (domain[0] + domain[1]) / 2;
  const halfWidth = (domain[1] - domain[0]) / 2;
  return {
    name: degree === 1 ? "straight line" : `polynomial of degree ${degree}`,
    kind: "polynomial",
    parameters: Array.from({ length: degree + 1 }, (_, k) => `c${k}`),
    toForm: (p) => ({ kind: "polynomial", coefficients: Array.from(p), centre, halfWidth }),
    start: (points) => {
      const n = degree + 1;
      const design = new Float64Array(points.length * n);
      for (const [i, p] of points.entries()) {
        for (let k = 0; k < n; k++) design[i * n + k] = ((p.signal - centre) / halfWidth) ** k / p.flowSd;
      }
      const solved = linearLeastSquares(design, Float64Array.from(points.map((p) => p.flow / p.flowSd)), n);
      return solved.status === "solved" ? Array.from(solved.parameters) : null;
    },
  };
}

type Start = { readonly start: number[]; readonly misfit: number };

function bestStart<Value>(grid: readonly Value[], attempt: (value: Value) => Start | null): number[] | null {
  let best: Start | null = null;
  for (const value of grid) {
    const found = attempt(value);
    if (found !== null && Number.isFinite(found.misfit) && (best === null || found.misfit < best.misfit)) best = found;
  }
  return best === null ? null : best.start;
}

/** Weighted y = intercept + slope x. */
function straightLine(
  points: readonly BenchPoint[],
  x: (p: BenchPoint) => number,
  y: (p: BenchPoint) => number,
  weight: (p: BenchPoint) => number,
): { readonly intercept: number; readonly slope: number; readonly misfit: number } | null {
  if (points.length < 2) return null;
  const design = Float64Array.from(points.flatMap((p) => [weight(p), weight(p) * x(p)]));
  const values = Float64Array.from(points.map((p) => weight(p) * y(p)));
  if (!design.every(Number.isFinite) || !values.every(Number.isFinite)) return null;
  const solved = linearLeastSquares(design, values, 2);
  if (solved.status !== "solved") return null;
  const [intercept = 0, slope = 0] = solved.parameters;
  return { intercept, slope, misfit: solved.residualSumOfSquares };
}
