/**
 * A meter curve from bench points (flow, signal, their uncertainties), the law chosen by evidence.
 *
 * Equation    min sum ((m(s_i) - m_i)/e_i)^2,  e_i^2 = u(m_i)^2 + (dm/ds)^2 u(s_i)^2                               (1)
 *             ln evidence = -chi2/(2 b^2) - (k/2) ln n,  b^2 = max(1, least chi2/(n - k) of all candidates)          (2)
 *             band of the chosen law: fit-band.ts
 * Symbols     m flow | s signal | e effective uncertainty | k parameters, n points | b Birge ratio: the scatter is larger than stated
 * Validity    at least k + 1 points for a candidate; a candidate that turns back in its domain is out
 * Numerics    (1) is solved by Levenberg and Marquardt, the effective uncertainty renewed three times
 * Source      [york1966] for (1), [schwarz1978] for (2), [birge1932] for b     Check  fit-curve.test.ts on curves of known law
 */
import type { SignalUnit } from "../../engine/index.ts";
import { levenbergMarquardt } from "../../numerics/index.ts";
import { failure, type Result, success } from "../../quantities/index.ts";
import { tellSignal } from "../tell-signal.ts";
import { type CurveForm, flowFunction } from "./curve-form.ts";
import { fitBand } from "./fit-band.ts";
import {
  type BenchPoint,
  type Candidate,
  EXPONENTIAL,
  FILM,
  FILM_PERIOD,
  KING,
  POWER,
  polynomialCandidate,
} from "./fit-candidates.ts";
import { curveSlope, type FlowCurve, turningSignal } from "./meter-curve.ts";

export type FittedParameter = { readonly name: string; readonly estimate: number; readonly standardError: number };

export type FittedForm = {
  readonly name: string;
  readonly form: CurveForm;
  readonly parameters: readonly FittedParameter[];
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** among the candidates that fitted; sums to one */
  readonly weight: number;
  /** (m(s_i) - m_i)/e_i */
  readonly residuals: readonly number[];
  readonly curve: FlowCurve;
};

export type CurveFit = {
  readonly chosen: FittedForm;
  /** most probable first, the chosen one included */
  readonly candidates: readonly FittedForm[];
  /** candidates that are out, with the reason in words */
  readonly rejected: readonly { readonly name: string; readonly reason: string }[];
  /** b of (2): 1 where the points scatter as their uncertainties say */
  readonly birgeRatio: number;
};

export type FitReason = "too-few-points" | "point-invalid" | "no-law-fits";

export type FitOptions = {
  readonly signalUnit: SignalUnit;
  readonly flow: "mass" | "volume";
  readonly at: { readonly pressure: number; readonly temperature: number } | null;
  /** names of laws to try ("King's law", "power law" ...); all where absent */
  readonly only?: readonly string[];
};

const MOST_DEGREE = 5;

export function fitCurve(points: readonly BenchPoint[], options: FitOptions): Result<CurveFit, FitReason> {
  const bad = points.findIndex((p) => ![p.signal, p.flow].every(Number.isFinite) || !(p.flowSd > 0));
  if (bad >= 0) {
    return failure(
      "point-invalid",
      `Point ${bad + 1} has no finite signal and flow, or no uncertainty above zero.`,
      "Give signal, flow and the standard uncertainty of the flow for every point.",
    );
  }
  const signals = points.map((p) => p.signal);
  if (new Set(signals).size < 3) {
    return failure(
      "too-few-points",
      `${points.length} points are too few for a curve.`,
      "Measure at three flows at least.",
    );
  }
  const domain = [Math.min(...signals), Math.max(...signals)] as const;
  const rejected: { name: string; reason: string }[] = [];
  const solved: SolvedCandidate[] = [];
  for (const candidate of candidatesFor(points, domain, options.signalUnit)) {
    if (options.only !== undefined && !options.only.includes(candidate.name)) continue;
    const outcome = solve(candidate, points, { domain, signalUnit: options.signalUnit });
    if (typeof outcome === "string") rejected.push({ name: candidate.name, reason: outcome });
    else solved.push(outcome);
  }
  if (solved.length === 0) {
    const reasons = rejected.map((r) => `${r.name}: ${r.reason}`).join("; ");
    return failure("no-law-fits", `No law fits these points (${reasons}).`, "Use the points themselves as the curve.");
  }
  const birge = Math.sqrt(Math.max(1, Math.min(...solved.map((s) => s.chiSquare / s.degreesOfFreedom))));
  const candidates = weighted(solved, points.length, birge).map((entry) => present(entry, { birge, domain, options }));
  return success({ chosen: candidates[0]!, candidates, rejected, birgeRatio: birge });
}

type SolvedCandidate = {
  readonly candidate: Candidate;
  readonly vector: Float64Array;
  readonly covariance: Float64Array;
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  readonly residuals: Float64Array;
};

function candidatesFor(
  points: readonly BenchPoint[],
  domain: readonly [number, number],
  signalUnit: SignalUnit,
): Candidate[] {
  const degrees = Array.from({ length: MOST_DEGREE }, (_, i) => i + 1);
  const distinct = new Set(points.map((p) => p.signal)).size;
  const film = points.some((p) => p.flow < 0) ? [signalUnit === "ms" ? FILM_PERIOD : FILM] : [];
  return [
    ...film,
    KING,
    POWER,
    EXPONENTIAL,
    ...degrees.filter((d) => d + 2 <= distinct).map((d) => polynomialCandidate(d, domain)),
  ];
}

function solve(
  candidate: Candidate,
  points: readonly BenchPoint[],
  { domain, signalUnit }: { readonly domain: readonly [number, number]; readonly signalUnit: SignalUnit },
) {
  const k = candidate.parameters.length;
  if (points.length < k + 1) return "too few points";
  let vector = candidate.start(points);
  if (vector === null) return "no start found";
  let fit: ReturnType<typeof levenbergMarquardt> | null = null;
  for (let pass = 0; pass < 3; pass++) {
    const weights = effectiveWeights(candidate.toForm(vector), points, domain);
    const residuals = (p: Float64Array, out: Float64Array): void => {
      if (candidate.holds?.(p) === false) {
        out.fill(Number.NaN); // the fit shortens its step
        return;
      }
      const flow = flowFunction(candidate.toForm(p));
      for (const [i, point] of points.entries()) out[i] = (flow(point.signal) - point.flow) * (weights[i] ?? 0);
    };
    const probe = new Float64Array(points.length);
    residuals(Float64Array.from(vector), probe);
    if (!probe.every(Number.isFinite)) return "the law is not defined at the start";
    fit = levenbergMarquardt({ residuals, start: vector, count: points.length });
    vector = Array.from(fit.parameters);
  }
  if (fit === null || fit.unitCovariance === null) return "the points do not determine its parameters";
  if (fit.status === "not-converged") return "the fit did not settle";
  if (!holdsAround(candidate, fit)) return "the points do not determine its parameters";
  const turning = turningSignal({ form: candidate.toForm(vector), domain });
  if (turning !== null) return `it turns back near ${tellSignal(signalUnit, turning)}`;
  return {
    candidate,
    vector: fit.parameters,
    covariance: fit.unitCovariance,
    chiSquare: fit.residualSumOfSquares,
    degreesOfFreedom: points.length - k,
    residuals: fit.residuals,
  };
}

/** Whether a standard deviation of any parameter stays within the law: the band is told from steps of that order. */
function holdsAround(candidate: Candidate, fit: ReturnType<typeof levenbergMarquardt>): boolean {
  const { parameters, unitCovariance } = fit;
  const k = parameters.length;
  const scatter = Math.sqrt(Math.max(1, fit.residualVariance));
  return Array.from(parameters).every((value, j) => {
    const step = scatter * Math.sqrt(unitCovariance![j * k + j]!);
    return [value - step, value + step].every((moved) => candidate.holds?.(parameters.with(j, moved)) !== false);
  });
}

/** 1/e_i of (1). */
function effectiveWeights(form: CurveForm, points: readonly BenchPoint[], domain: readonly [number, number]): number[] {
  return points.map((p) => {
    const slope = (p.signalSd ?? 0) === 0 ? 0 : curveSlope({ form, domain }, p.signal);
    return 1 / Math.hypot(p.flowSd, slope * (p.signalSd ?? 0));
  });
}

/** (2), as weights that sum to one, most probable first. */
function weighted(solved: readonly SolvedCandidate[], n: number, birge: number) {
  const evidence = solved.map(
    (s) => -s.chiSquare / (2 * birge * birge) - (s.candidate.parameters.length / 2) * Math.log(n),
  );
  const best = Math.max(...evidence);
  const total = evidence.reduce((sum, e) => sum + Math.exp(e - best), 0);
  return solved
    .map((s, i) => ({ solved: s, weight: Math.exp(evidence[i]! - best) / total }))
    .sort((a, b) => b.weight - a.weight);
}

function present(
  entry: { readonly solved: SolvedCandidate; readonly weight: number },
  at: { readonly birge: number; readonly domain: readonly [number, number]; readonly options: FitOptions },
): FittedForm {
  const { candidate, vector, covariance, chiSquare, degreesOfFreedom, residuals } = entry.solved;
  const k = vector.length;
  const form = candidate.toForm(vector);
  const { signalUnit, flow, at: air } = at.options;
  return {
    name: candidate.name,
    form,
    parameters: candidate.parameters.map((name, j) => ({
      name,
      estimate: vector[j]!,
      standardError: at.birge * Math.sqrt(covariance[j * k + j]!),
    })),
    chiSquare,
    degreesOfFreedom,
    weight: entry.weight,
    residuals: Array.from(residuals),
    curve: { signalUnit, flow, at: air, form, domain: at.domain, band: fitBand({ ...entry.solved, ...at }) },
  };
}
