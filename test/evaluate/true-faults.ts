/**
 * The planted faults in the terms in which findings are told: where a size is one at the largest flow, or at a share of it, the
 * findings mean the largest flow of the job and the model engine that of its drawing.
 */
import type { OperatingPoint } from "../../src/channels/index.ts";
import { flowOf, fouling, kingLaw, voltageOf } from "../../src/model-engine/hot-wire-meter.ts";
import { type Fault, prepareEngine, type Trace } from "../../src/model-engine/index.ts";
import { supplyShare, wrongCurveShare } from "../../src/model-engine/planted-laws.ts";
import type { InventedCase } from "../cases/draw-case.ts";

export type TrueFault = { readonly cause: string; readonly bank: 1 | 2 | null; readonly size: number };

export function trueFaults(one: InventedCase, points: readonly OperatingPoint[], truth: Trace): TrueFault[] {
  const prepared = prepareEngine(one.engine, one.ambient, one.faults);
  const largest = largestVisited(points, truth);
  const share = largest / prepared.largestFlow;
  return one.faults.map((fault) => ({
    cause: fault.cause,
    bank: fault.bank ?? null,
    size: sizeInJob(fault, one, { largest, share, idle: prepared.idleFlow, largestFuel: prepared.largestFuelFlow }),
  }));
}

function sizeInJob(
  fault: Fault,
  { engine }: InventedCase,
  flow: { readonly largest: number; readonly share: number; readonly idle: number; readonly largestFuel: number },
): number {
  switch (fault.cause) {
    case "breathing-reduced":
      return fault.size * Math.min(flow.share ** 2, 1.5);
    case "intake-restricted":
      return fault.size * flow.share ** 2;
    case "meter-curve-wrong":
      return wrongCurveShare({ at30: fault.errorAt30 ?? fault.size, at70: fault.size }, 0.7 * flow.share) - 1;
    case "meter-fouled": {
      const { meter } = engine.design;
      if (meter === null || meter.kind === "vane" || meter.kind === "vortex")
        throw new Error("Assertion failed: only a heated element is fouled");
      const law = kingLaw(meter);
      const at70 = 0.7 * flow.largest;
      const flows = { idle: flow.idle, largest: flow.largest / flow.share };
      return flowOf(law, fouling(law, fault.size, flows)(voltageOf(law, at70))) / at70 - 1;
    }
    // The findings tell the loss at the largest flow of the job, and where it begins as a second size.
    case "fuel-supply-limited": {
      const supply = { onset: fault.size * 1e-3, loss: fault.loss ?? 0.25 };
      return 1 - supplyShare(supply, flow.share * flow.largestFuel, flow.largestFuel);
    }
    default:
      return fault.size;
  }
}

function largestVisited(points: readonly OperatingPoint[], { time, airIntoCylinders, step }: Trace): number {
  let largest = 0;
  for (const { start, end } of points) {
    const i = Math.min(airIntoCylinders.length - 1, Math.max(0, Math.round(((start + end) / 2 - time[0]!) / step)));
    largest = Math.max(largest, airIntoCylinders[i]!);
  }
  return largest;
}
