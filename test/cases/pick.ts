/** One of several rows, each as likely as its weight says. */
import type { SeededRandom } from "../../src/numerics/index.ts";

export function pick<T extends { readonly weight: number }>(rows: readonly T[], random: SeededRandom): T {
  let left = random.uniform() * rows.reduce((sum, row) => sum + row.weight, 0);
  for (const row of rows) {
    left -= row.weight;
    if (left < 0) return row;
  }
  return rows[rows.length - 1]!;
}
