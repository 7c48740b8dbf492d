/**
 * Dead time of an injector at a battery voltage, from points.
 *
 * Equation    d = monotone interpolation through points (voltage, dead time)                                    (1)
 * Validity    inside the points; beyond them the end value is held and `inside` says false. Dead time falls as voltage rises (asserted)
 * Source      common practice, no source: makers state dead time at several voltages; about 1 ms at 14 V, twice that at 9 V
 */
import { evaluateMonotoneCubic, type MonotoneCubic, monotoneCubic } from "../numerics/index.ts";
import { assert } from "../quantities/index.ts";

export type DeadTimeCurve = { readonly curve: MonotoneCubic };

export function deadTimeCurve(points: readonly (readonly [voltage: number, deadTime: number])[]): DeadTimeCurve {
  const sorted = [...points].sort((a, b) => a[0] - b[0]);
  for (let i = 1; i < sorted.length; i++) {
    assert(sorted[i]![1] <= sorted[i - 1]![1], `dead time falls with voltage, it rises at ${sorted[i]![0]} V`);
  }
  return {
    curve: monotoneCubic(
      sorted.map(([voltage]) => voltage),
      sorted.map(([, deadTime]) => deadTime),
    ),
  };
}

export function deadTimeAt(
  { curve }: DeadTimeCurve,
  voltage: number,
): { readonly deadTime: number; readonly inside: boolean } {
  const low = curve.x[0]!;
  const high = curve.x[curve.x.length - 1]!;
  const held = Math.min(high, Math.max(low, voltage));
  return { deadTime: evaluateMonotoneCubic(curve, held), inside: held === voltage };
}
