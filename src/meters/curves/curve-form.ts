/**
 * The shapes a meter's curve can take, signal to flow and back. All of them are plain data in SI.
 *
 * Equation    points       monotone cubic through points (numerics/monotone-cubic.ts)                             (1)
 *             power        m = scale (s - offset)^exponent                                                       (2)
 *             king         s^2 = still + slope m^exponent                                                        (3)
 *             exponential  m = scale exp(rate s) + offset                                                        (4)
 *             film         s = zero + span film((m)/scaleFlow, leak)        hot-film/film-law.ts                   (5)
 *             film-period  1/s = zero + span film((m)/scaleFlow, leak)      the same read as a period              (5)
 *             polynomial   m = sum c_k x^k,  x = (s - centre)/halfWidth                                           (6)
 * Symbols     s signal in V, Hz, s or 1 | m kg/s or m3/s
 * Validity    each curve's own domain (meter-curve.ts); (2), (3) give zero below their zero of flow
 * Source      [king1914] for (3); a vane's track is cut so that (4) or (1) holds: common practice, no source
 * Check       inverse and monotony tested for every form in curves.props.test.ts
 */
import {
  evaluateMonotoneCubic,
  findRoot,
  intervalOf,
  type MonotoneCubic,
  monotoneCubic,
} from "../../numerics/index.ts";
import { filmMassFlow, filmSignal } from "../hot-film/film-law.ts";

export type CurveForm =
  | { readonly kind: "points"; readonly points: readonly (readonly [signal: number, flow: number])[] }
  | { readonly kind: "power"; readonly scale: number; readonly offset: number; readonly exponent: number }
  | { readonly kind: "king"; readonly still: number; readonly slope: number; readonly exponent: number }
  | { readonly kind: "exponential"; readonly scale: number; readonly rate: number; readonly offset: number }
  | {
      readonly kind: "film" | "film-period";
      readonly scaleFlow: number;
      readonly leak: number;
      readonly zero: number;
      readonly span: number;
    }
  | {
      readonly kind: "polynomial";
      readonly coefficients: readonly number[];
      readonly centre: number;
      readonly halfWidth: number;
    };

export type FormKind = CurveForm["kind"];
export const FORM_KINDS = ["points", "power", "king", "exponential", "film", "film-period", "polynomial"] as const;

/** Flow as a function of the signal; made once, so that points are prepared once. */
export function flowFunction(form: CurveForm): (signal: number) => number {
  switch (form.kind) {
    case "points": {
      const cubic = cubicOf(form.points);
      return (s) => evaluateMonotoneCubic(cubic, s);
    }
    case "power":
      return (s) => form.scale * Math.max(0, s - form.offset) ** form.exponent;
    case "king":
      return (s) => (Math.max(0, s * s - form.still) / form.slope) ** (1 / form.exponent);
    case "exponential":
      return (s) => form.scale * Math.exp(form.rate * s) + form.offset;
    case "film":
      return (s) => filmFlow(form, s);
    case "film-period":
      return (s) => (s > 0 ? filmFlow(form, 1 / s) : Number.NaN);
    case "polynomial":
      return (s) => horner(form.coefficients, (s - form.centre) / form.halfWidth);
  }
}

/** Signal as a function of the flow, within the domain; null where no signal of the domain gives this flow. */
export function signalFunction(form: CurveForm, domain: readonly [number, number]): (flow: number) => number | null {
  const within = (s: number): number | null => (Number.isFinite(s) && s >= domain[0] && s <= domain[1] ? s : null);
  switch (form.kind) {
    case "power":
      return (m) => within(m < 0 ? Number.NaN : form.offset + (m / form.scale) ** (1 / form.exponent));
    case "king":
      return (m) => within(m < 0 ? Number.NaN : Math.sqrt(form.still + form.slope * m ** form.exponent));
    case "exponential":
      return (m) => within(Math.log((m - form.offset) / form.scale) / form.rate);
    case "film":
      return (m) => within(form.zero + form.span * filmSignal(form, m));
    case "film-period":
      return (m) => within(1 / (form.zero + form.span * filmSignal(form, m)));
    default: {
      const flow = flowFunction(form);
      return (m) => {
        const outcome = findRoot((s) => flow(s) - m, { low: domain[0], high: domain[1] });
        return outcome.status === "found" ? outcome.root : null;
      };
    }
  }
}

/** A signal at or beyond the film's limits has no flow: not a number, which the curve's quality then says. */
function filmFlow(form: Extract<CurveForm, { kind: "film" | "film-period" }>, level: number): number {
  return filmMassFlow(form, (level - form.zero) / form.span) ?? Number.NaN;
}

function cubicOf(points: readonly (readonly [number, number])[]): MonotoneCubic {
  const sorted = [...points].sort((a, b) => a[0] - b[0]);
  return monotoneCubic(
    sorted.map(([signal]) => signal),
    sorted.map(([, flow]) => flow),
  );
}

function horner(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) sum = sum * x + coefficients[k]!;
  return sum;
}

/** Linear interpolation in a table of ascending abscissae, ends held. */
export function lookUp(x: Float64Array, y: Float64Array, at: number): number {
  const held = Math.min(x[x.length - 1]!, Math.max(x[0]!, at));
  const i = intervalOf(x, held);
  const share = (held - x[i]!) / (x[i + 1]! - x[i]!);
  return y[i]! + share * (y[i + 1]! - y[i]!);
}
