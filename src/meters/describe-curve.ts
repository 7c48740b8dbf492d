/**
 * A meter's curve as rows to print and points to draw, and signals converted with their intervals.
 *
 * Equation    sensitivity = d ln m/d ln s; flow per signal = dm/ds                                              (1)
 * Validity    inside the curve; rows outside carry the quality `outsideValidity`
 */
import { idealMoistAirDensity, type MoistAir } from "../gas/index.ts";
import { slopeOfMonotoneCubic } from "../numerics/index.ts";
import type { Quality } from "../quantities/index.ts";
import { densityFactor, meterFlow } from "./meter-flow.ts";
import { type MeterUncertainties, meterUncertainty } from "./meter-uncertainty.ts";
import { isPeriod, type PreparedMeter } from "./prepare-meter.ts";

export type ConvertedSignal = {
  readonly signal: number;
  readonly massFlow: number;
  readonly quality: Quality;
  /** kg/s, standard; null where no uncertainty was stated or the signal gives no flow */
  readonly standardUncertainty: number | null;
};

export function convertSignals(
  meter: PreparedMeter,
  signals: readonly number[],
  air: MoistAir,
  uncertainties?: MeterUncertainties,
): ConvertedSignal[] {
  return signals.map((signal) => {
    const { massFlow, quality } = meterFlow(meter, signal, air);
    const budget = uncertainties === undefined ? null : meterUncertainty(meter, signal, air, uncertainties);
    return { signal, massFlow, quality, standardUncertainty: budget?.standardUncertainty ?? null };
  });
}

export type CurveRow = {
  readonly signal: number;
  readonly massFlow: number;
  /** kg/s per unit of signal */
  readonly slope: number;
  /** per cent of flow for one per cent of signal; null at zero flow */
  readonly sensitivity: number | null;
};

/** `rows` signals equally spaced over the curve, in the air given. */
export function describeCurve(meter: PreparedMeter, air: MoistAir, rows = 21): CurveRow[] {
  const signals = signalRange(meter);
  return Array.from({ length: rows }, (_, i) => {
    const signal = signals[0] + ((signals[1] - signals[0]) * i) / (rows - 1);
    const { massFlow } = meterFlow(meter, signal, air);
    const slope = meterSlope(meter, signal, air);
    return { signal, massFlow, slope, sensitivity: massFlow === 0 ? null : (slope * signal) / massFlow };
  });
}

/** dm/ds in this air. */
export function meterSlope(meter: PreparedMeter, signal: number, air: MoistAir): number {
  const factor = densityFactor(meter, idealMoistAirDensity(air));
  if (!isPeriod(meter)) return slopeOfMonotoneCubic(meter.curve, signal) * factor;
  return (-slopeOfMonotoneCubic(meter.curve, 1 / signal) / signal ** 2) * factor;
}

/** Lowest and highest signal of the curve. */
export function signalRange(meter: PreparedMeter): readonly [number, number] {
  const { x } = meter.curve;
  const ends = [x[0]!, x[x.length - 1]!] as const;
  return isPeriod(meter) ? [1 / ends[1], 1 / ends[0]] : ends;
}
