/**
 * The inverse of meter-flow.ts: the signal a meter gives for a mass flow of moist air.
 *
 * Numerics    root in the curve's interval by Brent's method; inverse and forward agree to 1e-12 of the span (tested)
 * Validity    inside the curve's flows; beyond them along the end tangent with quality `outsideValidity`, and where that tangent is
 *             flat the end of the curve is returned
 */
import { idealMoistAirDensity, type MoistAir } from "../gas/index.ts";
import { evaluateInInterval, findRoot } from "../numerics/index.ts";
import { QUALITY, type Quality } from "../quantities/index.ts";
import { densityFactor } from "./meter-flow.ts";
import { isPeriod, type PreparedMeter } from "./prepare-meter.ts";

export type MeterSignal = { readonly signal: number; readonly quality: Quality };

export function meterSignal(meter: PreparedMeter, massFlow: number, air: MoistAir): MeterSignal {
  const wanted = massFlow / densityFactor(meter, idealMoistAirDensity(air));
  if (!Number.isFinite(wanted)) return { signal: Number.NaN, quality: QUALITY.notANumber };
  const { x, y, slope } = meter.curve;
  const last = x.length - 1;
  const [lowest, highest] = meter.falling ? [last, 0] : [0, last];
  const end = wanted < y[lowest]! ? lowest : wanted > y[highest]! ? highest : null;
  if (end !== null) {
    const abscissa = slope[end] === 0 ? x[end]! : x[end]! + (wanted - y[end]!) / slope[end]!;
    return { signal: fromAbscissa(meter, abscissa), quality: QUALITY.outsideValidity };
  }
  return { signal: fromAbscissa(meter, insideCurve(meter, wanted)), quality: QUALITY.good };
}

/** of the largest flow: what rounding leaves between a flow and the point of the curve it was read from */
const ROUNDING = 1e-12;

function insideCurve(meter: PreparedMeter, wanted: number): number {
  const { x, y } = meter.curve;
  const sign = meter.falling ? -1 : 1;
  let i = 0;
  while (i < x.length - 2 && (y[i + 1]! - wanted) * sign < 0) i++;
  const outcome = findRoot((s) => evaluateInInterval(meter.curve, i, s) - wanted, { low: x[i]!, high: x[i + 1]! });
  if (outcome.status === "found") return outcome.root;
  // A flow that is a point of the curve, but for rounding: the interval's two ends then lie on one side of it.
  const nearer = Math.abs(y[i]! - wanted) <= Math.abs(y[i + 1]! - wanted) ? i : i + 1;
  const largest = Math.max(Math.abs(y[0]!), Math.abs(y[y.length - 1]!));
  if (Math.abs(y[nearer]! - wanted) > ROUNDING * largest) {
    throw new Error(`Assertion failed: ${wanted} kg/s is not inside the curve`);
  }
  return x[nearer]!;
}

function fromAbscissa(meter: PreparedMeter, abscissa: number): number {
  return isPeriod(meter) ? 1 / abscissa : abscissa;
}
