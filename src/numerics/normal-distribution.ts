/**
 * The standard normal distribution, accurate in the far tails (one-sided likelihoods live there).
 *
 * Equation    Phi(x) = erfc(-x/sqrt 2)/2;  for x < -5 by the continued fraction of Mills' ratio
 *             Phi(-x)/phi(x) = 1/(x + 1/(x + 2/(x + 3/(x + ...))))                          [abramowitz1972] 26.2.14
 *             inside, by the series Phi(x) = 1/2 + phi(x) (x + x^3/3 + x^5/(3 5) + ...)      [abramowitz1972] 26.2.11
 * Validity    every finite x; relative error below 1e-13 for x > -37, the logarithm beyond
 * Check       published/special-functions.test.ts
 */
const LOG_SQRT_TWO_PI = 0.5 * Math.log(2 * Math.PI);
const TAIL = 5;

export function logNormalDensity(x: number): number {
  return -0.5 * x * x - LOG_SQRT_TWO_PI;
}

/** Phi(-x)/phi(x) for x >= TAIL. */
function millsRatio(x: number): number {
  let fraction = x;
  for (let k = 60; k >= 1; k--) fraction = x + k / fraction;
  return 1 / fraction;
}

function centralCdf(x: number): number {
  let term = x;
  let sum = x;
  for (let k = 3; Math.abs(term) > 1e-18 * Math.abs(sum) && k < 400; k += 2) {
    term *= (x * x) / k;
    sum += term;
  }
  return 0.5 + sum * Math.exp(logNormalDensity(x));
}

/** ln Phi(x) */
export function logNormalCdf(x: number): number {
  if (x < -TAIL) return logNormalDensity(x) + Math.log(millsRatio(-x));
  if (x > TAIL) return Math.log1p(-Math.exp(logNormalDensity(x)) * millsRatio(x));
  if (x < -1) return Math.log(upperTail(-x));
  return Math.log(centralCdf(x));
}

/** Phi(-x) for 1 < x <= TAIL without cancellation: the series of erfc's complement loses digits, the fraction converges. */
function upperTail(x: number): number {
  let fraction = x;
  for (let k = 400; k >= 1; k--) fraction = x + k / fraction;
  return Math.exp(logNormalDensity(x)) / fraction;
}

export function normalCdf(x: number): number {
  return Math.exp(logNormalCdf(x));
}

/** phi(x)/Phi(x), the slope of ln Phi */
export function inverseMills(x: number): number {
  return Math.exp(logNormalDensity(x) - logNormalCdf(x));
}

/** x with Phi(x) = p: a start by [abramowitz1972] 26.2.23, then Newton on ln Phi. */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) return p === 0 ? -Infinity : p === 1 ? Infinity : Number.NaN;
  if (p > 0.5) return -normalQuantile(1 - p);
  const t = Math.sqrt(-2 * Math.log(p));
  let x = -(t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))));
  for (let i = 0; i < 4; i++) x -= (logNormalCdf(x) - Math.log(p)) / inverseMills(x);
  return x;
}
