/**
 * First-order lag of a sampled signal, exact for a signal that is straight between its samples, and its undoing.
 *
 * Equation    tau y' + y = x                                                                                    (1)
 *             y_k+1 = y_k e + (x_k+1 - x_k)(1 - (1 - e) tau/h) + x_k (1 - e),   e = exp(-h/tau), h = t_k+1 - t_k     (2)
 * Symbols     tau s | h s
 * Validity    times ascend, tau > 0 (asserted). Undoing amplifies noise by about tau/h
 * Source      integral of (1) over a straight piece                          Check  first-order-lag.test.ts
 */
import { requirePositive } from "./require-range.ts";

export function firstOrderLag(times: Float64Array, input: Float64Array, timeConstant: number, out: Float64Array): void {
  requirePositive("time constant", timeConstant);
  if (input.length === 0) return;
  let y = input[0]!;
  out[0] = y;
  for (let k = 1; k < input.length; k++) {
    const step = pieceOf(times, k, timeConstant);
    const before = input[k - 1]!;
    y = y * step.decay + before * (1 - step.decay) + (input[k]! - before) * step.ramp;
    out[k] = y;
  }
}

/** The input that gives `lagged`: the inverse of (2), starting from a settled signal. */
export function undoFirstOrderLag(
  times: Float64Array,
  lagged: Float64Array,
  timeConstant: number,
  out: Float64Array,
): void {
  requirePositive("time constant", timeConstant);
  if (lagged.length === 0) return;
  let x = lagged[0]!;
  out[0] = x;
  for (let k = 1; k < lagged.length; k++) {
    const step = pieceOf(times, k, timeConstant);
    x += (lagged[k]! - lagged[k - 1]! * step.decay - x * (1 - step.decay)) / step.ramp;
    out[k] = x;
  }
}

/** Amplitude that is left of a sine of `frequency` Hz, and its delay in rad. */
export function lagResponse(
  frequency: number,
  timeConstant: number,
): { readonly gain: number; readonly phase: number } {
  const x = 2 * Math.PI * frequency * timeConstant;
  return { gain: 1 / Math.sqrt(1 + x * x), phase: -Math.atan(x) };
}

function pieceOf(times: Float64Array, k: number, tau: number): { readonly decay: number; readonly ramp: number } {
  const h = times[k]! - times[k - 1]!;
  requirePositive("time step", h);
  const lost = -Math.expm1(-h / tau);
  return { decay: 1 - lost, ramp: 1 - (lost * tau) / h };
}
