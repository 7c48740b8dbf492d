/** How a meter and its curve's air stand at the head of every answer. */
import { signalRange } from "../../meters/index.ts";
import { fromSi, unit } from "../../quantities/index.ts";
import { round } from "../outcome/points.ts";
import { lawName } from "./law-words.ts";
import type { MeterSource } from "./read-source.ts";
import type { MeterConversion } from "./result/meter-result-schema.ts";
import { shownSignal } from "./signals.ts";

export function identityOf(source: MeterSource): MeterConversion["meter"] {
  const { curve } = source;
  const [from, to] = signalRange(source.meter).map((signal) => round(shownSignal(curve.signalUnit, signal)));
  return {
    file: source.file,
    kind: source.kind,
    signalUnit: curve.signalUnit,
    measures: curve.flow,
    law: lawName(curve.form),
    signalFrom: from!,
    signalTo: to!,
    air: curveAirSheet(source.curveAir),
  };
}

export function curveAirSheet(air: MeterSource["curveAir"]): MeterConversion["meter"]["air"] {
  return {
    pressure_kPa: round(air.pressure / 1000),
    temperature_degC: round(fromSi(air.temperature, unit("degC"))),
    assumed: air.assumed,
  };
}

/** Said where the curve's air is not stated although this meter's reading depends on it. */
export function airWarnings(source: MeterSource): { code: string; text: string }[] {
  return source.meter.referenceAssumed
    ? [
        {
          code: "curve-air-assumed",
          text: "The curve does not say in which air it was taken, and this meter's reading depends on it: 20 °C and 101.325 kPa are assumed.",
        },
      ]
    : [];
}
