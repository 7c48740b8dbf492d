/**
 * Manifold pressure from the voltage of a ratiometric sensor, and back; what supply, ground and ambient do to it.
 *
 * Equation    ratio = (V - V_g)/(V_ref - V_g)                                                                   (1)
 *             p = line through the points at V = ratio V_nom   (+ p_a when the sensor reads gauge)                 (2)
 * Symbols     V V at the computer | V_g V ground shift of the sensor | V_ref V supply, V_nom V the supply at which the points hold |
 *             p Pa | p_a Pa ambient
 * Validity    at least two points, voltage and pressure ascending (`Result`); straight beyond the end points, with `inside` false
 * Source      definition of a ratiometric signal; with key on and engine off an absolute sensor reads the barometer: common practice, no source
 * Check       manifold-pressure.test.ts
 */
import { evaluateMonotoneCubic, type MonotoneCubic, monotoneCubic, requirePositive } from "../../numerics/index.ts";
import { failure, type Result, success } from "../../quantities/index.ts";

export type PressureSensor = {
  readonly toPressure: MonotoneCubic;
  readonly toVoltage: MonotoneCubic;
  readonly reads: "absolute" | "gauge";
  /** V */
  readonly nominalReference: number;
};

export type PressureSensorReason = "too-few-points" | "curve-not-monotone";

export function preparePressureSensor(description: {
  readonly points: readonly (readonly [voltage: number, pressure: number])[];
  readonly reads: "absolute" | "gauge";
  readonly reference: number | null;
}): Result<PressureSensor, PressureSensorReason> {
  const points = [...description.points].sort((a, b) => a[0] - b[0]);
  const remedy = "Give at least two points of voltage and pressure; the pressure rises with the voltage.";
  if (points.length < 2) return failure("too-few-points", "The manifold sensor has fewer than two points.", remedy);
  for (let i = 1; i < points.length; i++) {
    if (points[i]![0] === points[i - 1]![0] || points[i]![1] <= points[i - 1]![1]) {
      return failure("curve-not-monotone", `The manifold sensor's points turn back at ${points[i]![0]} V.`, remedy);
    }
  }
  const voltages = points.map(([voltage]) => voltage);
  const pressures = points.map(([, pressure]) => pressure);
  return success({
    toPressure: monotoneCubic(voltages, pressures),
    toVoltage: monotoneCubic(pressures, voltages),
    reads: description.reads,
    nominalReference: description.reference ?? 5,
  });
}

export type SensorSupply = {
  /** V; the nominal one where not measured */
  readonly reference?: number;
  readonly groundShift?: number;
};

export function pressureOfVoltage(
  sensor: PressureSensor,
  at: SensorSupply & { readonly voltage: number; readonly ambientPressure: number },
): { readonly pressure: number; readonly inside: boolean } {
  const { voltage, ambientPressure, reference = sensor.nominalReference, groundShift = 0 } = at;
  requirePositive("supply above ground", reference - groundShift);
  const nominal = ((voltage - groundShift) / (reference - groundShift)) * sensor.nominalReference;
  const { x } = sensor.toPressure;
  const own = evaluateMonotoneCubic(sensor.toPressure, nominal);
  return {
    pressure: sensor.reads === "gauge" ? own + ambientPressure : own,
    inside: nominal >= x[0]! && nominal <= x[x.length - 1]!,
  };
}

/** The inverse: to the accuracy of two interpolations (exact for a straight sensor). */
export function voltageOfPressure(
  sensor: PressureSensor,
  at: SensorSupply & { readonly pressure: number; readonly ambientPressure: number },
): number {
  const { pressure, ambientPressure, reference = sensor.nominalReference, groundShift = 0 } = at;
  const own = sensor.reads === "gauge" ? pressure - ambientPressure : pressure;
  const nominal = evaluateMonotoneCubic(sensor.toVoltage, own);
  return groundShift + (nominal / sensor.nominalReference) * (reference - groundShift);
}
