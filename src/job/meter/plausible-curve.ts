/** What no curve of a meter can hold: told before a law or a spline trips over it. */
import { type Failure, failure } from "../../quantities/index.ts";

/** far beyond any meter, in SI, so that nothing made of them overflows */
export const LARGEST_SIGNAL = 1e7;
export const LARGEST_FLOW = 100;
const PRESSURE = [20_000, 400_000] as const;
const TEMPERATURE = [213.15, 373.15] as const;

export function airFault(
  at: { readonly pressure: number; readonly temperature: number } | null,
): Failure<"value-invalid"> | null {
  if (at === null || (within(at.pressure, PRESSURE) && within(at.temperature, TEMPERATURE))) return null;
  return failure(
    "value-invalid",
    "The air in which the curve was taken cannot be: its pressure or temperature is out of range.",
    "Give 20 to 400 kPa and -60 to 100 degC.",
  );
}

export function pointsFault(
  points: readonly (readonly [signal: number, flow: number])[],
): Failure<"value-invalid"> | null {
  const wrong = points.find(([s, f]) => !(Math.abs(s) <= LARGEST_SIGNAL && Math.abs(f) <= LARGEST_FLOW));
  if (wrong !== undefined) {
    return failure(
      "value-invalid",
      `The curve has a signal or a flow that cannot be (${wrong.map((value) => Number(value.toPrecision(4))).join(", ")} in SI).`,
      "Check its numbers and their units.",
    );
  }
  const signals = points.map(([signal]) => signal).sort((a, b) => a - b);
  const span = signals.at(-1)! - signals[0]!;
  const touching = signals.findIndex((signal, i) => i > 0 && signal - signals[i - 1]! < CLOSEST * span);
  if (touching < 0) return null;
  return failure(
    "value-invalid",
    `The curve has two points at the same signal (${Number(signals[touching]!.toPrecision(6))} in SI), or all but the same.`,
    "Keep one of them, or fit a curve to all points.",
  );
}

/** of the span: nearer than any signal can be read, and the slope between them would mean nothing */
const CLOSEST = 1e-9;

function within(value: number, [low, high]: readonly [number, number]): boolean {
  return value >= low && value <= high;
}
