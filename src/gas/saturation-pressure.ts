/**
 * Saturation pressure of water vapour: over water from 0 degC up, over ice below.
 *
 * Equation    water: p_s = 1 MPa (2C / (-B + sqrt(B^2 - 4 A C)))^4 with A, B, C quadratics of theta = T + n9/(T - n10)     (1)
 *             ice:   ln p_s = a1/T + a2 + a3 T + a4 T^2 + a5 T^3 + a6 T^4 + a7 ln T                                    (2)
 * Symbols     p_s Pa | T K
 * Validity    173.15 to 647 K (asserted); at 0 degC the two agree to 1e-4
 * Source      (1) [iapws2007] eq. (30), table 34; (2) [hyland1983], constants as in [ashrae2017] ch. 1 eq. (5) (from memory,
 *             confirmed by the table values)                         Check published/ashrae2017.test.ts, published/iapws2007.test.ts
 */
import { findRoot, requireWithin } from "../numerics/index.ts";
import { ZERO_CELSIUS } from "../quantities/index.ts";

const N = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7,
  0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const;

const ICE = [-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019] as const;

export function saturationPressure(temperature: number): number {
  requireWithin("temperature", temperature, 173.15, 647);
  return temperature >= ZERO_CELSIUS ? overWater(temperature) : overIce(temperature);
}

/** Temperature at which water boils at this pressure: the inverse, from 611.2 Pa to 22 MPa. */
export function saturationTemperature(pressure: number): number {
  const outcome = findRoot((t) => Math.log(saturationPressure(t) / pressure), { low: ZERO_CELSIUS, high: 647 });
  requireWithin("pressure", outcome.status === "found" ? pressure : Number.NaN, 0, Number.MAX_VALUE);
  return outcome.status === "found" ? outcome.root : Number.NaN;
}

function overWater(t: number): number {
  const theta = t + N[8] / (t - N[9]);
  const a = theta * (theta + N[0]) + N[1];
  const b = theta * (N[2] * theta + N[3]) + N[4];
  const c = theta * (N[5] * theta + N[6]) + N[7];
  return 1e6 * ((2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))) ** 4;
}

function overIce(t: number): number {
  const [a1, a2, a3, a4, a5, a6, a7] = ICE;
  return Math.exp(a1 / t + a2 + t * (a3 + t * (a4 + t * (a5 + t * a6))) + a7 * Math.log(t));
}
