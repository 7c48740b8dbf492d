/** How numbers as written become SI: si = factor x + offset, or si = factor / x. Plain data, so that it is applied in one loop. */
import type { Unit } from "../../quantities/index.ts";

export type SiScale = { readonly factor: number; readonly offset: number; readonly inverse: boolean };

export function scaleOf(u: Unit): SiScale {
  return { factor: u.factor, offset: u.before * u.factor, inverse: false };
}

export function inSi(scale: SiScale, value: number): number {
  return scale.inverse ? scale.factor / value : value * scale.factor + scale.offset;
}

/** The rows asked for (null: all) in SI. */
export function allInSi(scale: SiScale, values: Float64Array, rows: Uint32Array | null): Float64Array {
  const { factor, offset, inverse } = scale;
  const length = rows === null ? values.length : rows.length;
  const out = new Float64Array(length);
  for (let i = 0; i < length; i++) {
    const value = values[rows === null ? i : rows[i]!]!;
    out[i] = inverse ? factor / value : value * factor + offset;
  }
  return out;
}

/** Share of ascending numbers, as written, that lie between two SI values. */
export function shareInside(scale: SiScale, sorted: Float64Array, low: number, high: number): number {
  if (sorted.length === 0) return 0;
  const back = (si: number) => (scale.inverse ? scale.factor / si : (si - scale.offset) / scale.factor);
  const [a, b] = [back(low), back(high)].sort((x, y) => x - y);
  const slack = 1e-9 * Math.max(Math.abs(a!), Math.abs(b!));
  return (firstAbove(sorted, b! + slack) - firstAtLeast(sorted, a! - slack)) / sorted.length;
}

function firstAtLeast(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

function firstAbove(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}
