/**
 * The demo job: an invented engine with an invented leak of 5 mm2 behind the throttle, made by `simulate`.
 * Its control probe is wide and its number is recorded, so that full load, where the loop is open, has a fuel witness too: there the
 * leak is gone, which parts it from a meter signal that lost a constant amount.
 */
import { assert } from "../../quantities/index.ts";
import { simulate } from "./simulate.ts";
import type { SimulateOptions } from "./simulate-options.ts";

export const DEMO_OPTIONS: SimulateOptions = {
  family: "petrol-with-meter",
  engineNumber: "14",
  probe: "wide",
  faults: ["manifold-leak=5 mm2"],
  protocol: "thorough",
  duration: "8 min",
  altitude: "200 m",
  temperature: "16 degC",
  humidity: "60 %",
  seed: "14",
};

export type DemoJob = {
  readonly title: string;
  readonly complaint: string;
  readonly note: string;
  readonly recording: { readonly name: string; readonly text: string };
  /** the engine file as JSON text */
  readonly engine: string;
};

export function demo(): DemoJob {
  const made = simulate(DEMO_OPTIONS, "");
  assert(made.ok, made.ok ? "" : made.message);
  return {
    title: "2.0 L petrol saloon, lean at idle",
    complaint:
      "Hunts and sometimes stalls at idle when warm, smooth at speed. The engine computer has stored a code for mixture too lean. The air meter was cleaned without effect.",
    note: "Demo: an invented engine with an invented fault; the recording was computed, not measured.",
    recording: { name: "demo-saloon.csv", text: made.value.recording },
    engine: made.value.engine,
  };
}
