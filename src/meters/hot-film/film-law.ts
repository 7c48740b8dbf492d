/**
 * Direction-sensing hot film: two temperature elements beside one heater, the stream carries the warmth from one to the other.
 *
 * Equation    s = exp(b - h) - exp(-b - h),   h = sqrt(b^2 + k^2),   b = m/m_0                                    (1)
 * Symbols     s signal over its limit, -1..1, odd in the flow | b flow over the film's own flow m_0 = 2 A_p D/x (x distance of the elements
 *             from the heater, D diffusivity by mass) | k = x over the length in which warmth leaks into the carrier
 * Validity    any finite m; s rises with m everywhere. m_0 > 0, k >= 0 (asserted)
 * Numerics    b - h is written as -k^2/(b + h), so that s keeps its digits near its limit
 * Assumes     conduction and transport along the stream with a linear leak, heater held at a fixed rise
 * Source      one-dimensional balance, derived here; the same model in [lammerink1993]   Check  hot-film.props.test.ts
 */
import { findRoot, requireFinite, requirePositive, requireWithin } from "../../numerics/index.ts";

export type FilmLaw = {
  /** kg/s */
  readonly scaleFlow: number;
  readonly leak: number;
};

export function filmSignal(law: FilmLaw, massFlow: number): number {
  requireFinite("mass flow", massFlow);
  requirePositive("scale flow", law.scaleFlow);
  requireWithin("leak", law.leak, 0, 100);
  const b = Math.abs(massFlow) / law.scaleFlow;
  const h = Math.hypot(b, law.leak);
  const downstream = b === 0 ? Math.exp(-h) : Math.exp((-law.leak * law.leak) / (b + h));
  return Math.sign(massFlow) * (downstream - Math.exp(-b - h));
}

/** The inverse of (1), signed; null at or beyond the signal's limits of -1 and 1. */
export function filmMassFlow(law: FilmLaw, signal: number): number | null {
  requireFinite("signal", signal);
  const wanted = Math.abs(signal);
  if (wanted === 0) return 0;
  let high = law.scaleFlow;
  while (filmSignal(law, high) < wanted) {
    high *= 2;
    if (high > 1e6 * law.scaleFlow) return null;
  }
  const outcome = findRoot((m) => filmSignal(law, m) - wanted, { low: 0, high });
  return outcome.status === "found" ? Math.sign(signal) * outcome.root : null;
}
