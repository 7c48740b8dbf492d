/**
 * Coordinates of many vectors in the few dimensions they span, from their inner products alone.
 *
 * Equation    G ~ X X',  G_ij = <v_i, v_j>,  row i of X the coordinates of v_i; the next axis is that of the vector with the
 *             largest part not yet spanned, until no such part is longer than `tolerance` (squared)
 * Symbols     n vectors | X n x r, row-major | r dimensions kept
 * Accuracy    |G_ij - (X X')_ij| <= tolerance for all i, j; exact for the vectors taken as axes
 * Source      [harbrecht2012] algorithm 1
 */
export type Coordinates = { readonly dimensions: number; readonly values: Float64Array };

/** `column(i)` holds the inner products of vector i with all; `first` is taken as the first axis whatever its length. */
export function pivotedCholesky(
  diagonal: Float64Array,
  column: (i: number) => Float64Array,
  tolerance: number,
  first: number,
): Coordinates {
  const n = diagonal.length;
  const left = diagonal.slice();
  const axes: Float64Array[] = [];
  for (let pivot = first; axes.length < n; ) {
    const length = left[pivot]!;
    if (axes.length > 0 && !(length > tolerance)) break;
    if (!(length > 0)) {
      // A first vector of no length spans nothing.
      axes.push(new Float64Array(n));
    } else {
      const products = column(pivot);
      const root = Math.sqrt(length);
      const axis = new Float64Array(n);
      for (let i = 0; i < n; i++) {
        let sum = products[i]!;
        for (const a of axes) sum -= a[i]! * a[pivot]!;
        axis[i] = sum / root;
      }
      for (let i = 0; i < n; i++) left[i] = left[i]! - axis[i]! ** 2;
      left[pivot] = 0;
      axes.push(axis);
    }
    pivot = largest(left);
  }
  const values = new Float64Array(n * axes.length);
  for (let i = 0; i < n; i++) for (let d = 0; d < axes.length; d++) values[i * axes.length + d] = axes[d]![i]!;
  return { dimensions: axes.length, values };
}

function largest(values: Float64Array): number {
  let best = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! > values[best]!) best = i;
  return best;
}
