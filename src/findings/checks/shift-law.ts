/** By how much faults shift the values of a check that is read as numbers, in each way in which they may show; SI. */
import type { DefiniteFault } from "../known.ts";
import type { NumberCheck, ShiftRule } from "./check-entry.ts";
import { inSi } from "./differences.ts";

export type Way = { readonly weight: number; readonly means: readonly number[]; readonly variance: number };

export type ShiftLaw = {
  readonly touches: (cause: string) => boolean;
  readonly ways: (faults: readonly DefiniteFault[], against: readonly number[]) => readonly Way[];
  /** of a healthy engine's values */
  readonly sds: readonly number[];
  /** what the values are usually read against */
  readonly usual: readonly number[];
};

export function shiftLaw({ values, rows }: NumberCheck): ShiftLaw {
  const byCause = new Map(rows.flatMap((row) => row.causes.map((cause) => [cause, row.parts] as const)));
  const nothing: Way = { weight: 1, means: values.map(() => 0), variance: 0 };
  return {
    touches: (cause) => byCause.has(cause),
    sds: values.map((value) => inSi(value, value.sd)),
    usual: values.map((value) => inSi(value, value.usual)),
    ways: (faults, against) =>
      faults.reduce<readonly Way[]>(
        (ways, fault) => {
          const parts = byCause.get(fault.cause);
          if (parts === undefined) return ways;
          return ways.flatMap((way) =>
            parts.map((part) => ({
              weight: way.weight * part.weight,
              means: way.means.map((mean, i) => {
                const oneUnit = inSi(values[i]!, 1);
                return mean + shiftOf(part.shifts[i]!, { size: fault.size, against: against[i]!, oneUnit });
              }),
              variance: way.variance + inSi(values[0]!, part.sd ?? 0) ** 2,
            })),
          );
        },
        [nothing],
      ),
  };
}

type ShiftInput = { readonly size: number; readonly against: number; readonly oneUnit: number };

/**
 * ratio-squared: delivery follows the root of the pressure difference, so pressure is off by s^2 - 1;
 * less-inverse: a share that moves the air wanted in proportion, s = assumed/true.
 */
function shiftOf({ per, factor }: ShiftRule, { size, against, oneUnit }: ShiftInput): number {
  switch (per) {
    case "none":
      return 0;
    case "size":
      return factor * size;
    case "size-times-against":
      return factor * size * against;
    case "ratio-squared":
      return factor * (size ** 2 - 1) * against;
    case "per-unit-size":
      return factor * size * oneUnit;
    case "less-inverse":
      return factor * (1 - 1 / size) * oneUnit;
    case "fixed":
      return factor * oneUnit;
  }
}
