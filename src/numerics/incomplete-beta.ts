/**
 * Regularised incomplete beta function I_x(a, b), with 1 - x handed in beside x so that neither tail loses its digits.
 *
 * Equation    I_x(a, b) = x^a (1-x)^b / (a B(a, b)) (1/(1 + d_1/(1 + d_2/(1 + ...))))                             (1)
 *             d_2m+1 = -(a+m)(a+b+m) x/((a+2m)(a+2m+1)),  d_2m = m (b-m) x/((a+2m-1)(a+2m))
 * Validity    a, b > 0, 0 <= x <= 1, y = 1 - x (asserted); relative error below 1e-12 up to a, b = 1e4
 * Numerics    for x above its mean (a/(a+b)) the other tail is computed: I_x(a, b) = 1 - I_y(b, a)
 * Source      [abramowitz1972] 26.5.8                                        Check  published/special-functions.test.ts
 */
import { logRatioMinus, stirlingCorrection } from "./log-gamma.ts";
import { requirePositive, requireWithin } from "./require-range.ts";

export type BetaArguments = { readonly a: number; readonly b: number; readonly x: number; readonly y: number };

export function incompleteBeta(at: BetaArguments): number {
  const { a, b, x, y } = at;
  requirePositive("a", a);
  requirePositive("b", b);
  requireWithin("x", x, 0, 1);
  requireWithin("x + y", x + y, 1 - 1e-12, 1 + 1e-12);
  if (x === 0 || y === 0) return x === 0 ? 0 : 1;
  return x <= (a + 1) / (a + b + 2) ? byFraction(a, b, x, y) : 1 - byFraction(b, a, y, x);
}

/** 1 - I_x(a, b), directly. */
export function upperIncompleteBeta(at: BetaArguments): number {
  return incompleteBeta({ a: at.b, b: at.a, x: at.y, y: at.x });
}

function byFraction(a: number, b: number, x: number, y: number): number {
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / nonZero(1 - ((a + b) * x) / (a + 1), tiny);
  let h = d;
  for (let m = 1; m < 100_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d, tiny);
    c = nonZero(1 + even / c, tiny);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d, tiny);
    c = nonZero(1 + odd / c, tiny);
    const factor = d * c;
    h *= factor;
    if (Math.abs(factor - 1) < 1e-16) break;
  }
  return (leadingFactor(a, b, x, y) * h) / a;
}

/** x^a y^b / B(a, b), by Stirling's formula around the mean a/(a+b). */
function leadingFactor(a: number, b: number, x: number, y: number): number {
  const n = a + b;
  const x0 = a / n;
  const y0 = b / n;
  const exponent =
    a * logRatioMinus(x, x0) +
    b * logRatioMinus(y, y0) +
    stirlingCorrection(n) -
    stirlingCorrection(a) -
    stirlingCorrection(b);
  return Math.sqrt((a * y0) / (2 * Math.PI)) * Math.exp(exponent);
}

function nonZero(value: number, tiny: number): number {
  return Math.abs(value) < tiny ? tiny : value;
}
