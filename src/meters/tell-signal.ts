/** A signal, and a point of a curve, in the units in which people read them. */
import type { MeterCurve, SignalUnit } from "../engine/index.ts";
import { fromSi, unit } from "../quantities/index.ts";

/** SI (V, Hz, s, 1) to the unit a person reads: only a period differs. */
export function shownSignal(signalUnit: SignalUnit, signal: number): number {
  return signalUnit === "ms" ? fromSi(signal, unit("ms")) : signal;
}

/** "2.5 V", "0.25 of the reference" */
export function tellSignal(signalUnit: SignalUnit, signal: number): string {
  const shown = Number(shownSignal(signalUnit, signal).toPrecision(5));
  return signalUnit === "ratio" ? `${shown} of the reference` : `${shown} ${signalUnit}`;
}

/** "2.5 V, 18.4 g/s" */
export function tellPoint(
  { signalUnit, flow }: Pick<MeterCurve, "signalUnit" | "flow">,
  [signal, value]: readonly [signal: number, flow: number],
): string {
  const symbol = flow === "mass" ? "g/s" : "L/s";
  return `${tellSignal(signalUnit, signal)}, ${Number(fromSi(value, unit(symbol)).toPrecision(5))} ${symbol}`;
}
