/** What is not sure about a reading: stated with the call, or the band of the curve. All are standard uncertainties. */
import type { SignalUnit } from "../../engine/index.ts";
import { curveFunctions, type MeterUncertainties } from "../../meters/index.ts";
import { rectangularUncertainty } from "../../numerics/index.ts";
import { type Result, success } from "../../quantities/index.ts";
import { type OptionTexts, optionFailure, readOptions } from "./option-values.ts";
import type { MeterSource } from "./read-source.ts";
import { nameOf, readSignal } from "./signals.ts";

export type UncertaintyOptions = OptionTexts<
  | "signalError"
  | "groundShift"
  | "supplyError"
  | "curveError"
  | "pressureError"
  | "temperatureError"
  | "installationError"
  | "gate"
>;

const share = { dimension: "ratio", low: 0, high: 0.5, unit: "%" } as const;
const RULES = {
  groundShift: { dimension: "voltage", low: 0, high: 5, unit: "V" },
  supplyError: share,
  curveError: share,
  pressureError: { dimension: "pressure", low: 0, high: 10_000, unit: "kPa" },
  temperatureError: { dimension: "difference", low: 0, high: 50, unit: "K" },
  installationError: share,
  gate: { dimension: "time", low: 1e-3, high: 100, unit: "s" },
} as const;

/** null where nothing is stated: then a curve without a band gives a reading without an interval. */
export function readUncertainties(
  options: UncertaintyOptions,
  signalUnit: SignalUnit,
): Result<MeterUncertainties | null, "option-invalid"> {
  const read = readOptions(options, RULES);
  if (!read.ok) return read;
  if (options.signalError === undefined && Object.values(read.value).every((value) => value === null))
    return success(null);
  const { groundShift, supplyError, curveError, pressureError, temperatureError, installationError } = read.value;
  const { gate } = read.value;
  if (gate !== null && signalUnit !== "Hz") {
    return optionFailure(
      `Pulses are counted of a frequency alone, and this meter is read in ${nameOf(signalUnit)}.`,
      "Leave the gate out.",
    );
  }
  const told: { -readonly [key in keyof MeterUncertainties]: number } = {};
  if (options.signalError !== undefined) {
    const signal = readSignal(options.signalError, signalUnit);
    if (!signal.ok) return optionFailure(`The signal error is off: ${signal.message}`, signal.remedy);
    if (signal.value < 0) return optionFailure("The signal error is below zero.", "Give a standard uncertainty.");
    told.signal = signal.value;
  }
  // one pulse more or less in the gate, anywhere within (vortex/count-resolution.ts)
  if (gate !== null) told.signal = Math.hypot(told.signal ?? 0, rectangularUncertainty(0.5 / gate));
  if (groundShift !== null) told.ground = groundShift;
  if (supplyError !== null) told.supply = supplyError;
  if (curveError !== null) told.curveRelative = curveError;
  if (pressureError !== null) told.pressure = pressureError;
  if (temperatureError !== null) told.temperature = temperatureError;
  if (installationError !== null) told.installation = installationError;
  return success(told);
}

/** Standard deviation of the curve along the signal, kg/s in its own air; null everywhere where the curve has no band. */
export function bandOf({ curve, meter }: MeterSource): (signal: number) => number | null {
  if (curve.band === null) return () => null;
  const { read } = curveFunctions(curve);
  const toMass = curve.flow === "volume" ? meter.referenceDensity : 1;
  return (signal) => {
    const { sd } = read(signal);
    return sd === null ? null : sd * toMass;
  };
}
