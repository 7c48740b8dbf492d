/**
 * A probability as a workshop says it: "9 in 10", "6 in 100", "fewer than 1 in 1000".
 *
 * Tenths between 0.1 and 0.94; hundredths towards either end, then thousandths, because 97 in 100 and 9 in 10 are
 * different promises, while 0.71 and 0.72 are not.
 */
import { assert } from "./assert.ts";

export function chanceWords(probability: number): string {
  assert(probability >= -1e-9 && probability <= 1 + 1e-9, `a probability lies between 0 and 1, got ${probability}`);
  if (probability < 0.0005) return "fewer than 1 in 1000";
  if (probability < 0.0095) return `${Math.round(probability * 1000)} in 1000`;
  if (probability < 0.095) return `${Math.round(probability * 100)} in 100`;
  if (probability < 0.945) return `${Math.max(1, Math.round(probability * 10))} in 10`;
  if (probability < 0.995) return `${Math.round(probability * 100)} in 100`;
  if (probability < 0.9995) return `${Math.round(probability * 1000)} in 1000`;
  return "more than 999 in 1000";
}
