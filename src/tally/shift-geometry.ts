/**
 * Shifts as points in a space where the Gaussian evidence is plain geometry: laid out once, any sum of shifts is then weighed
 * by a few dozen products.
 *
 * Equation    ln evidence(x) - ln evidence(0) = d.x - x.x/2,  x coordinates of a shift, d of what was recorded;  x + x' for both
 *             <x, y> = x'P y + standing rows - (Phi'P x)' H^-1 (Phi'P y)
 * Validity    exact (to `TOLERANCE`) where witnesses follow the air one to one and nothing is one-sided; what those add is not
 *             in it
 * Numerics    P and H as in likelihood.ts; axes by pivoted Cholesky, what was recorded first
 */
import { dot, pivotedCholesky, solveLower } from "../numerics/index.ts";
import { applyPrecision, type Prepared, type Shift } from "./likelihood.ts";

export type ShiftGeometry = {
  readonly dimensions: number;
  /** coordinates of what was recorded */
  readonly data: Float64Array;
  /** one row of coordinates a shift */
  readonly shifts: Float64Array;
};

/** squared length left out of any shift: its evidence is then known within about a thousandth */
const TOLERANCE = 1e-3;

type Image = { readonly vector: Float64Array; readonly standing: Float64Array; readonly whitened: Float64Array };

export function shiftGeometry(prepared: Prepared, shifts: readonly Shift[]): ShiftGeometry {
  const { model } = prepared;
  const recorded: Shift = { witnesses: model.y, standing: model.standing.map((s) => s.reading) };
  const all = [recorded, ...shifts];
  const images: Image[] = [];
  const diagonal = new Float64Array(all.length);
  all.forEach((shift, i) => {
    const { image, length } = imageOf(prepared, shift);
    images.push(image);
    diagonal[i] = Math.max(0, length);
  });
  const { dimensions, values } = pivotedCholesky(
    diagonal,
    (pivot) => productsWith(prepared, images, pivot),
    TOLERANCE,
    0,
  );
  return { dimensions, data: values.slice(0, dimensions), shifts: values.slice(dimensions) };
}

function imageOf(prepared: Prepared, shift: Shift): { image: Image; length: number } {
  const { model, factor } = prepared;
  const b = model.columns;
  const w = model.witnesses.length;
  const vector = shift.witnesses;
  const weighed = applyPrecision(prepared, vector);
  const whitened = new Float64Array(b);
  for (let row = 0; row < weighed.length; row++) {
    const value = weighed[row]!;
    if (value === 0) continue;
    for (const c of model.moving[row % w]!) whitened[c] = whitened[c]! + model.basis[row * b + c]! * value;
  }
  let length = dot(vector, weighed);
  const standing = Float64Array.from(model.standing, (observation, s) => {
    const scaled = (shift.standing[s] ?? 0) / Math.sqrt(observation.variance);
    for (let c = 0; c < b; c++)
      whitened[c] = whitened[c]! + (observation.basis[c]! * scaled) / Math.sqrt(observation.variance);
    length += scaled * scaled;
    return scaled;
  });
  solveLower(factor, b, whitened);
  return { image: { vector, standing, whitened }, length: length - dot(whitened, whitened) };
}

function productsWith(prepared: Prepared, images: readonly Image[], pivot: number): Float64Array {
  const one = images[pivot]!;
  const weighed = applyPrecision(prepared, one.vector);
  return Float64Array.from(
    images,
    (other) => dot(other.vector, weighed) + dot(other.standing, one.standing) - dot(other.whitened, one.whitened),
  );
}
