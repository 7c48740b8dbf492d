/**
 * The planted faults in the terms in which findings are told: where a size is one at the largest flow, or at a share of it, the
 * findings mean the largest flow of the job and the model engine that of its drawing; likewise at idle.
 */
import type { OperatingPoint } from "../../src/channels/index.ts";
import { flowOf, fouling, kingLaw, voltageOf } from "../../src/model-engine/hot-wire-meter.ts";
import { type Fault, prepareEngine, type Trace } from "../../src/model-engine/index.ts";
import { exhaustAirFlow, supplyShare, wrongCurveShare } from "../../src/model-engine/planted-laws.ts";
import type { InventedCase } from "../cases/draw-case.ts";

export type TrueFault = { readonly cause: string; readonly bank: 1 | 2 | null; readonly size: number };

export function trueFaults(one: InventedCase, points: readonly OperatingPoint[], truth: Trace): TrueFault[] {
  const prepared = prepareEngine(one.engine, one.ambient, one.faults);
  const { largest, idle: idleVisited } = visited(points, truth);
  const share = largest / prepared.largestFlow;
  return one.faults.map((fault) => ({
    cause: fault.cause,
    bank: fault.bank ?? null,
    size: sizeInJob(fault, one, {
      largest,
      share,
      idle: prepared.idleFlow,
      idleVisited,
      largestFuel: prepared.largestFuelFlow,
    }),
  }));
}

function sizeInJob(
  fault: Fault,
  { engine }: InventedCase,
  flow: {
    readonly largest: number;
    readonly share: number;
    readonly idle: number;
    readonly idleVisited: number;
    readonly largestFuel: number;
  },
): number {
  switch (fault.cause) {
    case "breathing-reduced":
      return fault.size * Math.min(flow.share ** 2, 1.5);
    case "intake-restricted":
      return fault.size * flow.share ** 2;
    case "meter-curve-wrong":
      return wrongCurveShare({ at30: fault.errorAt30 ?? fault.size, at70: fault.size }, 0.7 * flow.share) - 1;
    case "exhaust-air-added":
      return 1e3 * exhaustAirFlow(fault.size * 1e-3, flow.idleVisited, flow.idle);
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

type Visited = { readonly largest: number; readonly idle: number };

/** True air at the points: the largest, and that of idle (the least where the engine never idled). */
function visited(points: readonly OperatingPoint[], { time, airIntoCylinders, step }: Trace): Visited {
  const air = points.map(({ start, end, states }) => {
    const i = Math.min(airIntoCylinders.length - 1, Math.max(0, Math.round(((start + end) / 2 - time[0]!) / step)));
    return { flow: airIntoCylinders[i]!, idle: states.includes("idle") };
  });
  const flows = air.map((a) => a.flow);
  const idle = air.filter((a) => a.idle).map((a) => a.flow);
  return {
    largest: Math.max(0, ...flows),
    idle: idle.length === 0 ? Math.min(...flows) : idle.reduce((sum, m) => sum + m, 0) / idle.length,
  };
}
