/** A condition sampled at the times of the speed channel, as spans of time that stay within one stretch of the recording. */
import type { Stretch } from "../channel-set.ts";
import type { EngineState, StateSpan } from "./state-span.ts";

export type Grid = {
  readonly times: Float64Array;
  readonly stretches: readonly Stretch[];
  /** s, usual time between samples */
  readonly interval: number;
};

export type Condition = {
  readonly state: EngineState;
  readonly reason: string;
  readonly holds: (i: number) => boolean;
  /** s, shorter spans are not told */
  readonly atLeast?: number;
};

export function spansOf(grid: Grid, condition: Condition): StateSpan[] {
  const { times, interval } = grid;
  const spans: StateSpan[] = [];
  let from = -1;
  let stretch = 0;
  const close = (end: number): void => {
    if (from >= 0 && end - times[from]! >= (condition.atLeast ?? 0)) {
      spans.push({ state: condition.state, start: times[from]!, end, reason: condition.reason });
    }
    from = -1;
  };
  for (let i = 0; i < times.length; i++) {
    while (stretch + 1 < grid.stretches.length && times[i]! >= grid.stretches[stretch + 1]!.start) {
      close(endOf(grid, i - 1));
      stretch++;
    }
    // A sample that comes much later than usual says nothing of the time before it.
    if (from >= 0 && times[i]! - times[i - 1]! > 5 * Math.max(interval, 0.5)) close(endOf(grid, i - 1));
    if (condition.holds(i)) {
      if (from < 0) from = i;
    } else if (from >= 0) close(times[i]!);
  }
  if (from >= 0) close(endOf(grid, times.length - 1));
  return spans;
}

function endOf(grid: Grid, i: number): number {
  return (grid.times[i] ?? 0) + grid.interval;
}
