/**
 * Piecewise cubic Hermite interpolation that is monotone wherever the data are: no invented hump between two points.
 *
 * Equation    on [x_i, x_i+1], u = x - x_i:  y = y_i + u (d_i + u ((3 D - 2 d_i - d_i+1)/h + u (d_i + d_i+1 - 2 D)/h^2))     (1)
 *             inner slopes: weighted harmonic mean of the neighbouring secants, zero where they change sign            (2)
 *             end slopes: three-point formula, limited so that monotonicity is kept                                    (3)
 * Symbols     D secant slope of the interval | d_i slope at node i | h interval width
 * Validity    x strictly ascending (asserted); outside the nodes the end tangent is followed
 * Source      [fritsch1984] for (2); [fritsch1980] for the condition
 */
export type MonotoneCubic = {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly slope: Float64Array;
  /** four coefficients of u = x - x_i for each interval, lowest power first: the same curve, cheap to evaluate */
  readonly coefficients: Float64Array;
  /** interval that holds the start of each of equally wide cells: where to begin looking for the interval of an x */
  readonly cells: Uint32Array;
};

const CELLS_PER_INTERVAL = 4;

export function monotoneCubic(x: ArrayLike<number>, y: ArrayLike<number>): MonotoneCubic {
  const n = x.length;
  if (n < 2 || y.length !== n) throw new Error(`Assertion failed: ${n} abscissae and ${y.length} ordinates`);
  const xs = Float64Array.from(x);
  const ys = Float64Array.from(y);
  for (let i = 1; i < n; i++) {
    if (!(xs[i]! > xs[i - 1]!)) throw new Error(`Assertion failed: abscissae ascend, got ${xs[i - 1]} then ${xs[i]}`);
  }
  const slope = slopes(xs, ys);
  return { x: xs, y: ys, slope, coefficients: coefficients(xs, ys, slope), cells: cells(xs) };
}

/** Value at x; beyond the nodes along the end tangent. */
export function evaluateMonotoneCubic(curve: MonotoneCubic, x: number): number {
  return evaluateInInterval(curve, intervalOf(curve.x, x), x);
}

/** Values at many x into `out`, without allocation; what is not a number stays not a number. */
export function evaluateMonotoneCubicAt(curve: MonotoneCubic, x: Float64Array, out: Float64Array): void {
  const { x: nodes, y, slope, coefficients: c, cells: starts } = curve;
  const last = nodes.length - 1;
  const first = nodes[0]!;
  const end = nodes[last]!;
  const toCell = starts.length / (end - first);
  for (let k = 0; k < x.length; k++) {
    const at = x[k]!;
    if (at >= first && at < end) {
      let i = starts[((at - first) * toCell) | 0]!;
      while (at >= nodes[i + 1]!) i++;
      while (at < nodes[i]!) i--;
      const u = at - nodes[i]!;
      const j = 4 * i;
      out[k] = c[j]! + u * (c[j + 1]! + u * (c[j + 2]! + u * c[j + 3]!));
    } else if (at < first) {
      out[k] = y[0]! + slope[0]! * (at - first);
    } else {
      out[k] = y[last]! + slope[last]! * (at - end);
    }
  }
}

/** Index i of the interval [x_i, x_i+1] that holds x; the first or last one outside. */
export function intervalOf(nodes: Float64Array, x: number): number {
  let low = 0;
  let high = nodes.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (x >= nodes[middle]!) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Value at x by the cubic of interval i, which must hold x; beyond the nodes along the end tangent. */
export function evaluateInInterval(curve: MonotoneCubic, i: number, x: number): number {
  const { x: nodes, y, slope, coefficients: c } = curve;
  const last = nodes.length - 1;
  if (x < nodes[0]!) return y[0]! + slope[0]! * (x - nodes[0]!);
  if (x >= nodes[last]!) return y[last]! + slope[last]! * (x - nodes[last]!);
  const u = x - nodes[i]!;
  const j = 4 * i;
  return c[j]! + u * (c[j + 1]! + u * (c[j + 2]! + u * c[j + 3]!));
}

/** dy/dx at x. */
export function slopeOfMonotoneCubic(curve: MonotoneCubic, x: number): number {
  const { x: nodes, slope, coefficients: c } = curve;
  const last = nodes.length - 1;
  if (x < nodes[0]!) return slope[0]!;
  if (x >= nodes[last]!) return slope[last]!;
  const i = intervalOf(nodes, x);
  const u = x - nodes[i]!;
  const j = 4 * i;
  return c[j + 1]! + u * (2 * c[j + 2]! + 3 * u * c[j + 3]!);
}

function coefficients(x: Float64Array, y: Float64Array, slope: Float64Array): Float64Array {
  const c = new Float64Array(4 * (x.length - 1));
  for (let i = 0; i < x.length - 1; i++) {
    const h = x[i + 1]! - x[i]!;
    const secant = (y[i + 1]! - y[i]!) / h;
    c[4 * i] = y[i]!;
    c[4 * i + 1] = slope[i]!;
    c[4 * i + 2] = (3 * secant - 2 * slope[i]! - slope[i + 1]!) / h;
    c[4 * i + 3] = (slope[i]! + slope[i + 1]! - 2 * secant) / (h * h);
  }
  return c;
}

function cells(x: Float64Array): Uint32Array {
  const count = CELLS_PER_INTERVAL * (x.length - 1);
  const width = (x[x.length - 1]! - x[0]!) / count;
  return Uint32Array.from({ length: count }, (_, k) => intervalOf(x, x[0]! + k * width));
}

function slopes(x: Float64Array, y: Float64Array): Float64Array {
  const n = x.length;
  const secant = (i: number): number => (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!);
  const d = new Float64Array(n);
  if (n === 2) return d.fill(secant(0));
  for (let i = 1; i < n - 1; i++) {
    const before = secant(i - 1);
    const after = secant(i);
    if (before * after <= 0) continue;
    const hBefore = x[i]! - x[i - 1]!;
    const hAfter = x[i + 1]! - x[i]!;
    const wBefore = 2 * hAfter + hBefore;
    const wAfter = hAfter + 2 * hBefore;
    d[i] = (wBefore + wAfter) / (wBefore / before + wAfter / after);
  }
  d[0] = endSlope(x[1]! - x[0]!, x[2]! - x[1]!, secant(0), secant(1));
  d[n - 1] = endSlope(x[n - 1]! - x[n - 2]!, x[n - 2]! - x[n - 3]!, secant(n - 2), secant(n - 3));
  return d;
}

function endSlope(hEnd: number, hNext: number, secantEnd: number, secantNext: number): number {
  const d = ((2 * hEnd + hNext) * secantEnd - hEnd * secantNext) / (hEnd + hNext);
  if (d * secantEnd <= 0) return 0;
  if (secantEnd * secantNext < 0 && Math.abs(d) > 3 * Math.abs(secantEnd)) return 3 * secantEnd;
  return d;
}
