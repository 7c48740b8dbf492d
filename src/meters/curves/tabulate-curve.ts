/**
 * Any form of curve as a table of points for the fast path, with the error of the table stated.
 *
 * Numerics    equally spaced nodes, doubled until the monotone cubic through them departs from the form by less than the tolerance at
 *             five places of every interval, measured against the largest flow. Near a zero of flow a relative error has no meaning
 * Validity    the form must be monotone over its domain (`not-monotone` otherwise)
 */
import type { MeterCurve } from "../../engine/index.ts";
import { evaluateMonotoneCubic, monotoneCubic } from "../../numerics/index.ts";
import { failure, type Result, success } from "../../quantities/index.ts";
import { tellSignal } from "../tell-signal.ts";
import { flowFunction } from "./curve-form.ts";
import { type FlowCurve, turningSignal } from "./meter-curve.ts";

export type TabulatedCurve = {
  readonly curve: MeterCurve;
  /** largest departure from the form, over the largest flow */
  readonly tableError: number;
};

const FIRST_NODES = 17;
const MOST_NODES = 4097;
/** where an interval is looked at: a cubic's error has its peaks between the quarter points */
const PROBES = [0.15, 0.3, 0.5, 0.7, 0.85];

export function tabulateCurve(curve: FlowCurve, tolerance = 1e-6): Result<TabulatedCurve, "not-monotone"> {
  const { signalUnit, flow, at, form, domain } = curve;
  if (form.kind === "points") {
    return success({ curve: { signalUnit, flow, at, points: form.points }, tableError: 0 });
  }
  const turning = turningSignal(curve);
  if (turning !== null) {
    return failure(
      "not-monotone",
      `The curve turns back near ${tellSignal(signalUnit, turning)}.`,
      "Choose a law or a lower degree, or give more points where the curve turns.",
    );
  }
  const flowOf = flowFunction(form);
  let nodes = FIRST_NODES;
  for (;;) {
    const { points, tableError } = tableOf(flowOf, domain, nodes);
    if (tableError <= tolerance || nodes >= MOST_NODES) {
      return success({ curve: { signalUnit, flow, at, points }, tableError });
    }
    nodes = 2 * nodes - 1;
  }
}

function tableOf(flowOf: (signal: number) => number, domain: readonly [number, number], nodes: number) {
  const step = (domain[1] - domain[0]) / (nodes - 1);
  const signals = Array.from({ length: nodes }, (_, i) => (i === nodes - 1 ? domain[1] : domain[0] + i * step));
  const flows = signals.map(flowOf);
  const cubic = monotoneCubic(signals, flows);
  const largest = Math.max(...flows.map(Math.abs));
  let worst = 0;
  for (let i = 0; i < nodes - 1; i++) {
    for (const share of PROBES) {
      const at = signals[i]! + share * step;
      worst = Math.max(worst, Math.abs(evaluateMonotoneCubic(cubic, at) - flowOf(at)));
    }
  }
  const points = signals.map((signal, i) => [signal, flows[i]!] as const);
  return { points, tableError: worst / largest };
}
