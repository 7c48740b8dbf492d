/** Witness rows as arrays: values, presence, error covariances, bounds. */
import type { TallyModel, TallyWitness } from "./tally-model.ts";
import type { WitnessRow } from "./witness-row.ts";

export type LaidRows = Pick<TallyModel, "y" | "present" | "errors" | "bounds">;

/** `scatter(i)`: variance of the pressure witness at point i beside what its readings say (recirculation from moment to moment). */
export function layRows(
  rows: readonly WitnessRow[],
  witnesses: readonly TallyWitness[],
  pointNoise: number,
  scatter: (i: number) => number,
): LaidRows {
  const k = rows.length;
  const w = witnesses.length;
  const y = new Float64Array(k * w);
  const present = new Uint8Array(k * w);
  const errors = new Float64Array(k * w * w);
  rows.forEach((row, i) => {
    for (const { variance, effect } of row.shared) addShared(errors, i, witnesses, variance, effect);
    witnesses.forEach((id, j) => {
      const own = (i * w + j) * w + j;
      errors[own] = errors[own]! + pointNoise ** 2 + (id === "pressure" ? scatter(i) : 0);
      const value = row.y.get(id);
      if (value === undefined) return;
      y[i * w + j] = value;
      present[i * w + j] = 1;
    });
  });
  const bounds = rows.flatMap((row, i) =>
    row.bounds.map((bound, b) => ({ point: i, witness: witnesses.indexOf(row.boundWitness[b]!), ...bound })),
  );
  return { y, present, errors, bounds };
}

function addShared(
  errors: Float64Array,
  i: number,
  witnesses: readonly TallyWitness[],
  variance: number,
  effect: ReadonlyMap<TallyWitness, number>,
): void {
  const w = witnesses.length;
  for (let p = 0; p < w; p++) {
    const effectP = effect.get(witnesses[p]!) ?? 0;
    if (effectP === 0) continue;
    for (let q = 0; q < w; q++) {
      const at = (i * w + p) * w + q;
      errors[at] = errors[at]! + variance * effectP * (effect.get(witnesses[q]!) ?? 0);
    }
  }
}
