/** How large a fault can be on this job at most: a reading holds some truth, some fuel comes from the injectors. */

/** A share that no fault may take of a reading, a dose or an opening time: with more the engine would not have run so. */
export const MOST_SHARE = 0.7;

/** The least of a quantity over the points where it is known; infinite where it never is. */
export function least(values: Iterable<number> | undefined): number {
  let low = Infinity;
  for (const value of values ?? []) if (value > 0) low = Math.min(low, value);
  return low;
}
