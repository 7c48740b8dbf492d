/** Whether a meter's reading stands at the high end of its curve. */
import type { OperatingPoint } from "../channels/index.ts";
import type { PreparedMeter } from "../meters/index.ts";
import type { MeterSlot } from "./meter-slots.ts";
import { find, RAW_SIGNAL } from "./readings.ts";

/** relative */
const AT_END = 0.002;

/** Raw signals at or beyond the last point; reported flows that stop within a hair of the largest flow of the curve. */
export function stopsAtEnd(slot: MeterSlot, points: readonly OperatingPoint[]): (point: OperatingPoint) => boolean {
  const { prepared, bank } = slot;
  if (prepared === null) return () => false;
  const end = Math.max(...prepared.curve.y);
  const highest = Math.max(0, ...points.map((p) => find(p, "meterFlow", bank)?.high ?? 0));
  // A flow that depends on the density of the air has no fixed end.
  const flowStops = prepared.densityExponent === 0 && Math.abs(highest / end - 1) <= AT_END;
  return (point) => {
    const flow = find(point, "meterFlow", bank);
    if (flow !== null) return flowStops && flow.mean >= (1 - AT_END) * end;
    const raw = find(point, RAW_SIGNAL[prepared.signalUnit], bank);
    return raw !== null && beyond(prepared, raw.mean);
  };
}

function beyond({ curve, falling, signalUnit }: PreparedMeter, signal: number): boolean {
  const abscissa = signalUnit === "ms" ? 1 / signal : signal;
  const [first, last] = [curve.x[0]!, curve.x[curve.x.length - 1]!];
  const margin = AT_END * (last - first);
  return falling ? abscissa <= first + margin : abscissa >= last - margin;
}
