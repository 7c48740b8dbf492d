/**
 * Root of a continuous function inside a bracket, by Brent's method: bisection when in doubt, inverse quadratic
 * interpolation or the secant when they behave.
 *
 * Validity    f(low) and f(high) of opposite sign (or one of them zero): otherwise `no-bracket`, a value and not an exception
 * Numerics    ends when the bracket is below 4 ulp |x| + tolerance
 * Source      [brent1973] ch. 4
 */
export type RootOutcome =
  | { readonly status: "found"; readonly root: number; readonly evaluations: number }
  | { readonly status: "no-bracket" | "no-convergence"; readonly evaluations: number };

export type Bracket = { readonly low: number; readonly high: number; readonly tolerance?: number };

const MAX_EVALUATIONS = 200;

export function findRoot(f: (x: number) => number, bracket: Bracket): RootOutcome {
  let a = bracket.low;
  let b = bracket.high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return { status: "found", root: a, evaluations: 2 };
  if (!(fa * fb <= 0)) return { status: "no-bracket", evaluations: 2 };
  let c = a;
  let fc = fa;
  let step = b - a;
  let stepBefore = step;
  for (let evaluations = 2; evaluations < MAX_EVALUATIONS; evaluations++) {
    if (fb * fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      stepBefore = step;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const tolerance = 2 * Number.EPSILON * Math.abs(b) + (bracket.tolerance ?? 0) / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= tolerance || fb === 0) return { status: "found", root: b, evaluations };
    if (Math.abs(stepBefore) < tolerance || Math.abs(fa) <= Math.abs(fb)) {
      step = half;
      stepBefore = half;
    } else {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const r = fb / fc;
        const u = fa / fc;
        p = s * (2 * half * u * (u - r) - (b - a) * (r - 1));
        q = (u - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      p = Math.abs(p);
      if (2 * p < Math.min(3 * half * q - Math.abs(tolerance * q), Math.abs(stepBefore * q))) {
        stepBefore = step;
        step = p / q;
      } else {
        step = half;
        stepBefore = half;
      }
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > tolerance ? step : half > 0 ? tolerance : -tolerance;
    fb = f(b);
  }
  return { status: "no-convergence", evaluations: MAX_EVALUATIONS };
}
