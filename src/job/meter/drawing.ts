/** A meter's curve as points: in the air at the meter, with the band of the curve where it has one. */
import { idealMoistAirDensity, type MoistAir } from "../../gas/index.ts";
import { densityFactor, meterFlow, signalRange } from "../../meters/index.ts";
import { round } from "../outcome/points.ts";
import { bandOf } from "./convert-uncertainty.ts";
import type { MeterSource } from "./read-source.ts";
import type { CurveSheet } from "./result/meter-result-schema.ts";
import { shownSignal } from "./signals.ts";

type DrawnPoint = CurveSheet["drawing"][number];

const DRAWN = 97;
/** 90 % of a normal distribution lies within so many standard deviations. */
export const SD_TO_90 = 1.6449;

export function drawingOf(source: MeterSource, air: MoistAir): DrawnPoint[] {
  const [low, high] = signalRange(source.meter);
  const point = drawnPoints(source, air);
  return Array.from({ length: DRAWN }, (_, i) => point(low + ((high - low) * i) / (DRAWN - 1)));
}

/** The point of the curve at a signal, prepared once for many. */
export function drawnPoints(source: MeterSource, air: MoistAir): (signal: number) => DrawnPoint {
  const { meter } = source;
  const band = bandOf(source);
  const toAir = densityFactor(meter, idealMoistAirDensity(air));
  return (signal) => {
    const { massFlow } = meterFlow(meter, signal, air);
    const sd = band(signal);
    const at = (z: number) => (sd === null ? null : round(1000 * (massFlow + z * sd * toAir)));
    return {
      signal: round(shownSignal(meter.signalUnit, signal)),
      massFlow_g_per_s: round(1000 * massFlow),
      low90_g_per_s: at(-SD_TO_90),
      high90_g_per_s: at(SD_TO_90),
    };
  };
}
