/** The truth in short: means over each step of the protocol. Road driving is one step. */
import type { Protocol, Segment, Trace, TraceColumn } from "../../model-engine/index.ts";
import { fromSi, unit } from "../../quantities/index.ts";
import type { SimulatedStep } from "./simulate-schema.ts";

/** 1/s: an engine that does not turn, or runs down */
const STILL = 3;
const LEAKS: readonly TraceColumn[] = ["leakFlow", "leakBeforeThrottleFlow", "boostLeakFlow"];

export function toldSteps(protocol: Protocol, truth: Trace, hasMeter: boolean): SimulatedStep[] {
  const steps: SimulatedStep[] = [];
  for (const { what, from, to } of stretches(protocol)) {
    const first = Math.round(from / truth.step);
    const last = Math.min(truth.rows, Math.round(to / truth.step));
    if (last <= first) continue;
    const mean = (column: TraceColumn) => {
      let sum = 0;
      for (let row = first; row < last; row++) sum += truth[column][row]!;
      return sum / (last - first);
    };
    const still = mean("speed") < STILL;
    const told = (column: TraceColumn, symbol: string) => tidy(fromSi(mean(column), unit(symbol)));
    steps.push({
      what,
      start_s: tidy(first * truth.step),
      end_s: tidy(last * truth.step),
      speed_rpm: told("speed", "1/min"),
      manifoldPressure_kPa: told("manifoldPressure", "kPa"),
      air_g_per_s: told("airIntoCylinders", "g/s"),
      meterReading_g_per_s: hasMeter ? told("meterReading", "g/s") : null,
      leaks_g_per_s: tidy(LEAKS.reduce((sum, column) => sum + told(column, "g/s"), 0)),
      lambda: still ? null : lambdaOf(truth, first, last),
      trims: still ? null : tidy((1 + mean("shortTrim")) * (1 + mean("longTrim")) - 1),
    });
  }
  return steps;
}

/** Four decimals: what is less is rounding of the solver, not air. */
function tidy(value: number): number {
  return Math.round(value * 1e4) / 1e4 + 0;
}

/** Air over what the fuel of the stretch needs: the mean weighted by fuel, so that fuel cut does not count. */
function lambdaOf({ lambda, fuelFlow }: Trace, first: number, last: number): number | null {
  let air = 0;
  let fuel = 0;
  for (let row = first; row < last; row++) {
    air += lambda[row]! * fuelFlow[row]!;
    fuel += fuelFlow[row]!;
  }
  return fuel > 0 ? tidy(air / fuel) : null;
}

type Stretch = { readonly what: string; readonly from: number; readonly to: number };

function stretches(protocol: Protocol): Stretch[] {
  const found: Stretch[] = [];
  let time = 0;
  for (const segment of protocol) {
    const from = time;
    time += segment.seconds;
    const before = found.at(-1);
    const what = wordsOf(segment, before?.what);
    if (before?.what === what) found.splice(-1, 1, { ...before, to: time });
    else found.push({ what, from, to: time });
  }
  return found;
}

const DRIVING = "driving";

function wordsOf(segment: Segment, before: string | undefined): string {
  const told = (speed: number) => `${Math.round(fromSi(speed, unit("1/min")))} rpm`;
  switch (segment.do) {
    case "key-on":
      return before === undefined ? "key on, engine still" : "engine switched off";
    case "idle":
      return segment.accessoryTorque === undefined ? "idle" : `idle, ${segment.accessoryTorque} N m more load`;
    case "hold":
      return told(segment.speed);
    case "snap":
      return "snap";
    case "drive":
      return segment.load < 1 ? DRIVING : `wide open, ${told(segment.speed)}`;
    case "pull":
      return `full load to ${told(segment.to)}`;
    case "overrun":
      return before === DRIVING ? DRIVING : "overrun";
  }
}
