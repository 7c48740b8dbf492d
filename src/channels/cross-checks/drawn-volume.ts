/**
 * The volume an engine seems to draw in each cycle, from flow, speed, manifold pressure and temperature:
 *   V eta = 2 R T m / (p N)                                                     (Heywood 2.27; four-stroke, N in 1/s)
 * Displacement times breathing: between 0.5 and 1 of the displacement on an engine that breathes fresh air, about half of
 * that where recirculated gas takes its place. Good enough to see a wrong unit or a wrong displacement, nothing finer.
 */
import { GAS_CONSTANT_DRY_AIR } from "../../quantities/index.ts";
import { bestChannel } from "../best-channel.ts";
import type { ChannelSet, RecognisedChannel } from "../channel-set.ts";
import { heldAt, quantile } from "../held-track.ts";

export type DrawnVolume = {
  /** m3, over the running engine: lower quartile, median, upper decile */
  readonly low: number;
  readonly median: number;
  readonly high: number;
  readonly samples: number;
};

const RUNNING = 400 / 60; // 1/s
/** K, charge temperature where none is recorded: a tenth off at most, in this rough figure */
const USUAL_TEMPERATURE = 310;
const FEWEST = 10;

/** Null where speed or pressure are not recorded, or the engine hardly ran. */
export function drawnVolume(set: Pick<ChannelSet, "channels">, flow: RecognisedChannel): DrawnVolume | null {
  const speed = bestChannel(set, "engineSpeed");
  const pressure = bestChannel(set, "manifoldPressure");
  if (speed === undefined || pressure === undefined) return null;
  const temperature = bestChannel(set, "intakeTemperature");
  const n = heldAt(speed, flow.times);
  const p = heldAt(pressure, flow.times);
  const t = temperature === undefined ? null : heldAt(temperature, flow.times);
  const volumes = flow.values.map((m, i) => {
    if (flow.quality[i] !== 0 || !(n[i]! > RUNNING) || !(p[i]! > 0) || !(m > 0)) return Number.NaN;
    const kelvin = t === null || Number.isNaN(t[i]!) ? USUAL_TEMPERATURE : t[i]!;
    return (2 * GAS_CONSTANT_DRY_AIR * kelvin * m) / (p[i]! * n[i]!);
  });
  const samples = volumes.reduce((count, value) => count + (Number.isNaN(value) ? 0 : 1), 0);
  if (samples < FEWEST) return null;
  return { low: quantile(volumes, 0.25), median: quantile(volumes, 0.5), high: quantile(volumes, 0.9), samples };
}
