/**
 * A meter curve as data: its form, where it holds, and how sure it is.
 *
 * Validity    inside `domain`; outside the form is followed as far as it goes and the quality says `outsideValidity`
 */
import type { SignalUnit } from "../../engine/index.ts";
import { findRoot } from "../../numerics/index.ts";
import { QUALITY, type Quality } from "../../quantities/index.ts";
import { type CurveForm, flowFunction, lookUp, signalFunction } from "./curve-form.ts";

export type FlowCurve = {
  readonly signalUnit: SignalUnit;
  readonly flow: "mass" | "volume";
  /** the air in which the curve was taken; null where not stated */
  readonly at: { readonly pressure: number; readonly temperature: number } | null;
  readonly form: CurveForm;
  readonly domain: readonly [low: number, high: number];
  /** standard deviation of the flow (kg/s or m3/s) along the signal; null where not known */
  readonly band: { readonly signal: readonly number[]; readonly sd: readonly number[] } | null;
};

export type CurveReading = {
  readonly flow: number;
  /** standard deviation; null where the curve has no band */
  readonly sd: number | null;
  readonly quality: Quality;
};

export type CurveFunctions = {
  readonly read: (signal: number) => CurveReading;
  readonly signalOf: (flow: number) => number | null;
  readonly flowOf: (signal: number) => number;
};

/** The curve made ready: what can be prepared once is prepared once. */
export function curveFunctions(curve: FlowCurve): CurveFunctions {
  const flowOf = flowFunction(curve.form);
  const signalOf = signalFunction(curve.form, curve.domain);
  const band = curve.band === null ? null : [Float64Array.from(curve.band.signal), Float64Array.from(curve.band.sd)];
  return {
    flowOf,
    signalOf,
    read: (signal) => {
      const flow = flowOf(signal);
      const inside = signal >= curve.domain[0] && signal <= curve.domain[1];
      const usable = Number.isFinite(flow);
      return {
        flow,
        sd: band === null ? null : lookUp(band[0]!, band[1]!, signal),
        quality: !usable ? QUALITY.notANumber : inside ? QUALITY.good : QUALITY.outsideValidity,
      };
    },
  };
}

/** Where the flow turns back within the domain, or null for a monotone curve. */
export function turningSignal(curve: Pick<FlowCurve, "form" | "domain">): number | null {
  const flow = flowFunction(curve.form);
  const [low, high] = curve.domain;
  const steps = 512;
  const direction = Math.sign(flow(high) - flow(low));
  for (let i = 1; i <= steps; i++) {
    const at = low + ((high - low) * i) / steps;
    const before = low + ((high - low) * (i - 1)) / steps;
    if ((flow(at) - flow(before)) * direction < 0 || !Number.isFinite(flow(at))) return at;
  }
  return null;
}

/** d flow / d signal by central difference over a thousandth of the domain. */
export function curveSlope(curve: Pick<FlowCurve, "form" | "domain">, signal: number): number {
  const flow = flowFunction(curve.form);
  const h = (curve.domain[1] - curve.domain[0]) / 1000;
  const low = Math.max(curve.domain[0], signal - h);
  const high = Math.min(curve.domain[1], signal + h);
  return (flow(high) - flow(low)) / (high - low);
}

/** Signal at which the curve reads zero flow, within the domain; null where it never does. */
export function zeroFlowSignal(curve: Pick<FlowCurve, "form" | "domain">): number | null {
  const flow = flowFunction(curve.form);
  const outcome = findRoot(flow, { low: curve.domain[0], high: curve.domain[1] });
  return outcome.status === "found" ? outcome.root : null;
}
