/** The unknowns as columns: healthy tolerances first, the recirculation map last. */
import type { RecirculationMap } from "./recirculation.ts";
import type { TallyModel, TallyWitness } from "./tally-model.ts";
import type { Unknown } from "./unknown-forms.ts";

export type LaidBasis = Pick<TallyModel, "basis" | "columns" | "moving" | "unknowns" | "nonNegative">;

/** `recirculates`: which witnesses hold healthy recirculation, point by point. */
export function layBasis(
  points: number,
  witnesses: readonly TallyWitness[],
  unknowns: readonly Unknown[],
  map: RecirculationMap | null,
  recirculates: (w: TallyWitness, i: number) => boolean,
): LaidBasis {
  const w = witnesses.length;
  let from = 0;
  const placed = unknowns.map(({ name, columns: own }) => {
    from += own;
    return { name, from: from - own, columns: own };
  });
  const plain = from;
  const columns = plain + (map?.columns ?? 0);
  const basis = new Float64Array(points * w * columns);
  const row = new Float64Array(columns);
  for (let i = 0; i < points; i++) {
    for (let j = 0; j < w; j++) {
      row.fill(0);
      unknowns.forEach((unknown, n) => {
        unknown.fill(i, witnesses[j]!, row, placed[n]!.from);
      });
      if (map !== null && recirculates(witnesses[j]!, i)) map.fill(i, row, plain);
      basis.set(row, (i * w + j) * columns);
    }
  }
  const nonNegative = (map?.nodes ?? []).map((node) => {
    const form = new Float64Array(columns);
    form.set(node, plain);
    return form;
  });
  return { basis, columns, moving: movingColumns(basis, witnesses.length, columns), unknowns: placed, nonNegative };
}

/** Columns that are not zero at every point, per witness: most unknowns move one witness only. */
export function movingColumns(basis: Float64Array, w: number, columns: number): Int32Array[] {
  return Array.from({ length: w }, (_, j) => {
    const found = new Set<number>();
    for (let row = j; row * columns < basis.length; row += w) {
      for (let c = 0; c < columns; c++) if (basis[row * columns + c] !== 0) found.add(c);
    }
    return Int32Array.from([...found].sort((a, b) => a - b));
  });
}
