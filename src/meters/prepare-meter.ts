/**
 * A meter made ready to read: its curve as moist-air mass flow in the air of calibration, monotone and smooth.
 *
 * A volume column is brought to mass by the calibration density, so that one law serves all kinds (sensed-density.ts); with a
 * vortex meter that density cancels again. A period ("ms") is turned into a frequency first, in which curves are nearly straight.
 */
import type { MeterCurve, MeterDescription, MeterKind, SignalUnit } from "../engine/index.ts";
import { idealMoistAirDensity } from "../gas/index.ts";
import { type MonotoneCubic, monotoneCubic } from "../numerics/index.ts";
import { failure, type Result, STANDARD_ATMOSPHERE, success } from "../quantities/index.ts";
import { type DensityExponent, sensedDensityExponent } from "./sensed-density.ts";
import { tellPoint } from "./tell-signal.ts";

export type PreparedMeter = {
  readonly kind: MeterKind;
  readonly signalUnit: SignalUnit;
  readonly densityExponent: DensityExponent;
  /** kg/m3, air of calibration */
  readonly referenceDensity: number;
  /** the air of calibration was not stated although this meter needs it, and standard air was taken */
  readonly referenceAssumed: boolean;
  /** abscissa: signal, or 1/signal for a period; ordinate: kg/s in the air of calibration */
  readonly curve: MonotoneCubic;
  /** flow falls where the abscissa rises */
  readonly falling: boolean;
};

export type MeterReason = "no-curve" | "too-few-points" | "curve-not-monotone" | "curve-point-invalid";

/** Air assumed where a curve does not say: 20 degC, one atmosphere, dry. Common practice, no source. */
export const ASSUMED_CALIBRATION_AIR = {
  pressure: STANDARD_ATMOSPHERE,
  temperature: 293.15,
  humidityRatio: 0,
} as const;

export function prepareMeter(meter: MeterDescription): Result<PreparedMeter, MeterReason> {
  const { curve } = meter;
  if (curve === null) {
    return failure("no-curve", `The ${meter.id} has no curve, so its raw signal cannot be turned into flow.`, REMEDY);
  }
  if (curve.points.length < 2) {
    return failure("too-few-points", `The curve of the ${meter.id} has fewer than two points.`, REMEDY);
  }
  const bad = curve.points.find(
    ([x, y]) =>
      !Number.isFinite(x) || !Number.isFinite(y) || (isPeriod(curve) && x <= 0) || (y < 0 && meter.kind !== "hot-film"),
  );
  if (bad !== undefined) {
    return failure(
      "curve-point-invalid",
      `The curve of the ${meter.id} has the point ${tellPoint(curve, bad)}, which cannot be.`,
      REMEDY,
    );
  }
  const exponent = sensedDensityExponent(meter.kind);
  const reference = curve.at === null ? ASSUMED_CALIBRATION_AIR : { ...curve.at, humidityRatio: 0 };
  const referenceDensity = idealMoistAirDensity(reference);
  const perMass = curve.flow === "volume" ? referenceDensity : 1;
  const sorted = [...curve.points].sort((a, b) => a[0] - b[0]);
  const fault = monotoneFault(curve, sorted);
  if (fault !== null) {
    return failure("curve-not-monotone", `The curve of the ${meter.id} ${fault}.`, REMEDY);
  }
  const points = sorted.map(([signal, flow]) => [isPeriod(curve) ? 1 / signal : signal, flow * perMass] as const);
  if (isPeriod(curve)) points.reverse();
  return success({
    kind: meter.kind,
    signalUnit: curve.signalUnit,
    densityExponent: exponent,
    referenceDensity,
    referenceAssumed: curve.at === null && needsReference(curve, exponent),
    curve: monotoneCubic(
      points.map(([x]) => x),
      points.map(([, y]) => y),
    ),
    falling: points.at(-1)![1] < points[0]![1],
  });
}

const REMEDY =
  "Give at least two points of signal and flow; the flow must rise, or fall, all along the signal, and only a hot film may show a flow below zero.";

/** A mass column of a wire needs no air, nor does a volume column of a vortex meter; all else refers to the air it was taken in. */
function needsReference(curve: MeterCurve, exponent: DensityExponent): boolean {
  return curve.flow === "volume" ? exponent !== 1 : exponent !== 0;
}

export function isPeriod(curve: { readonly signalUnit: SignalUnit }): boolean {
  return curve.signalUnit === "ms";
}

/** Of points by ascending signal. */
function monotoneFault(curve: MeterCurve, points: MeterCurve["points"]): string | null {
  const tell = (point: readonly [number, number]): string => tellPoint(curve, point);
  const direction = Math.sign(points.at(-1)![1] - points[0]![1]);
  if (direction === 0) return "ends at the flow it begins with";
  for (let i = 1; i < points.length; i++) {
    const before = points[i - 1]!;
    const here = points[i]!;
    if (here[0] === before[0]) return `has two points at the same signal (${tell(before)} and ${tell(here)})`;
    if ((here[1] - before[1]) * direction < 0) return `turns back between ${tell(before)} and ${tell(here)}`;
  }
  return null;
}
