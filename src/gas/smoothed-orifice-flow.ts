/**
 * The orifice flow of orifice-mass-flow.ts with a finite slope at equal pressures, for integrators: the root law has an infinite
 * slope there, which makes step control and Newton solvers fail.
 *
 * Equation    Psi_s(r) = Psi(r),                               r <= r_s                                          (1)
 *             Psi_s(r) = a x + b x^3, x = (1 - r)/(1 - r_s),    r > r_s, a and b from value and slope of Psi at r_s   (2)
 * Symbols     r pressure ratio | r_s = 1 - smoothing
 * Numerics    (2) meets value and slope at r_s, goes through zero without curvature (so the reversed flow joins smoothly) and is monotone.
 *             Above r_s it departs from the root law by less than 0.25 Psi(r_s) (tested): with smoothing 1e-3 that is 1.7 % of
 *             the choked flow
 * Validity    0 < smoothing < 0.2 (asserted)
 * Source      [heywood1988] App. C for (1); (2) own numerics               Check published/heywood1988.test.ts
 */
import { requireWithin } from "../numerics/index.ts";
import { GAMMA_AIR } from "../quantities/index.ts";
import { orificeFlowFunction, orificeFlowFunctionSlope } from "./orifice-flow-function.ts";

export type SmoothedFlowFunction = (pressureRatio: number) => number;

/** Made once for a gamma and a smoothing, used at every step; 0 from r = 1 up, like the law it smooths. */
export function smoothedOrificeFlowFunction(smoothing: number, gamma: number = GAMMA_AIR): SmoothedFlowFunction {
  requireWithin("smoothing", smoothing, 1e-12, 0.2);
  const start = 1 - smoothing;
  const value = orificeFlowFunction(start, gamma);
  const slope = -orificeFlowFunctionSlope(start, gamma) * smoothing;
  // a x + b x^3 with a + b = value, a + 3 b = slope: at the join slope is near value/2, so that b < 0 < a
  const b = (slope - value) / 2;
  const a = value - b;
  return (r) => {
    if (r <= start) return orificeFlowFunction(r, gamma);
    if (r >= 1) return 0;
    const x = (1 - r) / smoothing;
    return x * (a + b * x * x);
  };
}
