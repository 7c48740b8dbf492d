/**
 * The integral of exp(f(x)) over an interval, and the distribution it stands for, where f is a log density that may be
 * far narrower than the interval.
 *
 * Method      f is sampled and taken as linear between samples, which makes each piece's integral closed, raised by
 *             -f'' h^2/12 for its bend; the pieces that carry mass and bend most are halved until the bend could change
 *             the whole by no more than `tolerance` in any piece
 * Result      ln of the integral, and the pieces, from which quantiles and weighted nodes follow
 * Check       published/adaptive-quadrature.test.ts (Gaussians down to 1e-3 of the interval, closed forms)
 */
export type Density = {
  /** ascending */
  readonly x: readonly number[];
  /** ln of the integrand at x */
  readonly logValue: readonly number[];
  /** ln of the whole integral; -Infinity where the integrand vanishes everywhere */
  readonly logIntegral: number;
};

const TOLERANCE = 2e-3;
const MOST_SAMPLES = 160;

export function integrateExponential(
  f: (x: number) => number,
  low: number,
  high: number,
  startSamples = 17,
  tolerance = TOLERANCE,
): Density {
  let x = Array.from({ length: startSamples }, (_, i) => low + ((high - low) * i) / (startSamples - 1));
  let y = x.map(f);
  for (;;) {
    const total = logIntegralOf(x, y);
    if (total === -Infinity) return { x, logValue: y, logIntegral: total };
    const split = piecesToSplit(x, y, total, tolerance);
    if (split.size === 0 || x.length >= MOST_SAMPLES) return { x, logValue: y, logIntegral: total };
    const nextX: number[] = [];
    const nextY: number[] = [];
    for (let i = 0; i < x.length; i++) {
      nextX.push(x[i]!);
      nextY.push(y[i]!);
      if (split.has(i)) {
        const middle = (x[i]! + x[i + 1]!) / 2;
        nextX.push(middle);
        nextY.push(f(middle));
      }
    }
    x = nextX;
    y = nextY;
  }
}

/** ln of the integral of exp over one piece with linear exponent. */
function logPiece(width: number, a: number, b: number): number {
  if (a === -Infinity && b === -Infinity) return -Infinity;
  if (a === -Infinity || b === -Infinity) return Math.max(a, b) + Math.log(width / 2);
  const d = b - a;
  if (Math.abs(d) < 1e-6) return (a + b) / 2 + Math.log(width);
  return Math.max(a, b) + Math.log((width * -Math.expm1(-Math.abs(d))) / Math.abs(d));
}

/** The same, raised by what the bend (from the neighbours' slopes) adds, where the bend is small enough to be believed. */
function logBentPiece(x: readonly number[], y: readonly number[], i: number): number {
  const width = x[i + 1]! - x[i]!;
  const straight = logPiece(width, y[i]!, y[i + 1]!);
  const bend = (curvature(x, y, i) + curvature(x, y, i + 1)) / 2;
  return straight - Math.max(-0.5, Math.min(0.5, (bend * width * width) / 12));
}

function logIntegralOf(x: readonly number[], y: readonly number[]): number {
  let largest = -Infinity;
  const pieces: number[] = [];
  for (let i = 0; i + 1 < x.length; i++) {
    const piece = logBentPiece(x, y, i);
    pieces.push(piece);
    largest = Math.max(largest, piece);
  }
  if (largest === -Infinity) return -Infinity;
  let sum = 0;
  for (const piece of pieces) sum += Math.exp(piece - largest);
  return largest + Math.log(sum);
}

/** Pieces whose bend (judged with their neighbours' slopes) could change the whole by more than the tolerance. */
function piecesToSplit(x: readonly number[], y: readonly number[], total: number, tolerance: number): Set<number> {
  const split = new Set<number>();
  for (let i = 0; i + 1 < x.length; i++) {
    const width = x[i + 1]! - x[i]!;
    const peak = Math.max(y[i]!, y[i + 1]!);
    const bend = Math.max(Math.abs(curvature(x, y, i)), Math.abs(curvature(x, y, i + 1))) * width * width;
    // A peak between samples can hide in a piece whose ends look small: the bend tells how high it might rise.
    const possible = Math.exp(Math.min(0, peak + Math.min(bend / 8, 30) + Math.log(width) - total));
    if (possible * Math.min(1, bend / 12) > tolerance) split.add(i);
  }
  return split;
}

/** Second derivative of f at a sample, from the slopes on both sides; at an end that of the next sample. */
function curvature(x: readonly number[], y: readonly number[], at: number): number {
  const i = Math.max(1, Math.min(x.length - 2, at));
  const left = (y[i]! - y[i - 1]!) / (x[i]! - x[i - 1]!);
  const right = (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!);
  const bend = (right - left) / ((x[i + 1]! - x[i - 1]!) / 2);
  return Number.isFinite(bend) ? bend : 0;
}

/** The x below which the share p of the density lies. */
export function densityQuantile(density: Density, p: number): number {
  const { x, logValue, logIntegral } = density;
  let below = 0;
  for (let i = 0; i + 1 < x.length; i++) {
    const share = Math.exp(logBentPiece(x, logValue, i) - logIntegral);
    if (below + share >= p || i + 2 === x.length) {
      const part = share > 0 ? Math.min(1, Math.max(0, (p - below) / share)) : 0;
      return x[i]! + (x[i + 1]! - x[i]!) * inversePart(part, logValue[i + 1]! - logValue[i]!);
    }
    below += share;
  }
  return x[x.length - 1]!;
}

/** Solves (e^{d t} - 1)/(e^d - 1) = part for t in 0..1. */
function inversePart(part: number, d: number): number {
  if (!Number.isFinite(d) || Math.abs(d) < 1e-6) return part;
  return d > 0 ? 1 + Math.log(part + (1 - part) * Math.exp(-d)) / d : -Math.log1p(-part * -Math.expm1(d)) / -d;
}

/** Points with weights that sum to one, standing for the density (the pieces' middles). */
export function densityNodes(density: Density): { readonly x: number; readonly weight: number }[] {
  const { x, logValue, logIntegral } = density;
  const nodes: { x: number; weight: number }[] = [];
  for (let i = 0; i + 1 < x.length; i++) {
    const weight = Math.exp(logBentPiece(x, logValue, i) - logIntegral);
    if (weight > 1e-6)
      nodes.push({ x: x[i]! + (x[i + 1]! - x[i]!) * inversePart(0.5, logValue[i + 1]! - logValue[i]!), weight });
  }
  return nodes;
}
