/** Fixed words of the meter pages, and how their numbers are told. */

import type {
  AmbientReading,
  AmbientSheet,
  BudgetShare,
  CompensationName,
  ConvertedRow,
  CurveAir,
  MeterAir,
  MeterIdentity,
  MeterKindName,
  MeterResult,
  SignalUnitName,
} from "../../job/meter-result.ts";
import { formatInterval, formatNumber, formatPercent, MINUS, NARROW_SPACE, withUnit } from "../words/number-words.ts";

export const METER_TITLES: { readonly [kind in MeterResult["kind"]]: string } = {
  convert: "Signal and air",
  curve: "Meter curve",
  ambient: "Altitude, heat and tilt",
  fit: "Curve from bench points",
  bench: "Flow bench",
};

export const KIND_WORDS: { readonly [kind in MeterKindName]: string } = {
  vane: "vane meter",
  vortex: "vortex meter",
  "hot-wire": "hot-wire meter",
  "hot-film": "hot-film meter",
};

/** Columns of the ambient table: what the engine computer corrects. */
export const COMPENSATION_WORDS: { readonly [name in CompensationName]: string } = {
  none: "nothing corrected",
  temperature: "temperature corrected",
  pressure: "pressure corrected",
  "temperature-and-pressure": "both corrected",
};

export const SIGNAL_WORDS: { readonly [unit in SignalUnitName]: string } = {
  V: "signal, V",
  Hz: "signal, Hz",
  ms: "signal, ms",
  ratio: "signal, share of the reference",
};

/** "2.5 V", "0.25" */
export function tellSignal(value: number, unit: SignalUnitName): string {
  const text = formatNumber(value, 4);
  return unit === "ratio" ? text : withUnit(text, unit);
}

/** "hot-wire meter, 7 points from 0.98 V to 4.4 V" */
export function tellMeter(meter: MeterIdentity): string {
  const kind = meter.kind === null ? "meter of a kind not stated" : KIND_WORDS[meter.kind];
  const from = tellSignal(meter.signalFrom, meter.signalUnit);
  const to = tellSignal(meter.signalTo, meter.signalUnit);
  const flow = meter.measures === "volume" ? ", a volume" : "";
  return `${kind}, curve from ${from} to ${to} (${meter.law}${flow})`;
}

/** "98.9 kPa (engine file), 12 °C (stated), dry: 1.21 kg/m³" */
export function tellAir(air: MeterAir): string {
  const pressure = `${withUnit(formatNumber(air.pressure_kPa, 4), "kPa")} (${air.pressureFrom})`;
  const temperature = `${withUnit(formatNumber(air.temperature_degC), "degC")} (${air.temperatureFrom})`;
  const humidity = air.relativeHumidity === 0 ? "dry" : `${formatPercent(air.relativeHumidity, false)} humid`;
  return `${pressure}, ${temperature}, ${humidity}: ${withUnit(formatNumber(air.density_kg_per_m3), "kg/m3")}`;
}

export function tellCurveAir(air: CurveAir): string {
  const told = `${withUnit(formatNumber(air.pressure_kPa, 6), "kPa")}, ${withUnit(formatNumber(air.temperature_degC), "degC")}`;
  return air.assumed ? `${told} (assumed)` : told;
}

export const WHERE_WORDS: { readonly [where in ConvertedRow["where"]]: string } = {
  inside: "",
  below: "below the curve",
  above: "above the curve",
  "no-flow": "no flow at this signal",
  "no-signal": "no signal for this flow",
};

/** "33.2 to 35.0", "" where not known */
export function tellInterval(value: number | null, low: number | null, high: number | null): string {
  if (value === null || low === null || high === null) return "";
  const told = formatInterval(value, low, high);
  return `${told.low} to ${told.high}`;
}

/** A value to the decimals of its interval, or to three digits where it has none. */
export function tellValue(value: number | null, low: number | null, high: number | null): string {
  if (value === null) return MINUS;
  if (low === null || high === null) return formatNumber(value);
  return formatInterval(value, low, high).value;
}

const G_PER_S_TO_KG_PER_H = 3.6;

export function kgPerHour(flow_g_per_s: number): number {
  return flow_g_per_s * G_PER_S_TO_KG_PER_H;
}

/** "+13 %" */
export function tellReading({ readingOverTruth }: AmbientReading): string {
  if (readingOverTruth === null) return "flap hangs open";
  return Math.abs(readingOverTruth - 1) < 0.0005 ? `0${NARROW_SPACE}%` : formatPercent(readingOverTruth - 1);
}

/** "0.890", over the lambda meant */
export function tellLambda(reading: AmbientReading | undefined): string {
  const ratio = reading?.lambdaRatio ?? null;
  return ratio === null ? MINUS : ratio.toFixed(3);
}

/** One column for each thing the engine computer may correct; wire and film sense mass, so there is nothing to correct. */
export function readingColumns({
  meterKind,
  compensations,
}: Pick<AmbientSheet, "meterKind" | "compensations">): string[] {
  const sensesMass = meterKind === "hot-wire" || meterKind === "hot-film";
  return compensations.map((name) => (sensesMass ? "reading" : COMPENSATION_WORDS[name]));
}

/** "curve 80 %, signal 20 %": the shares that can be seen */
export function tellBudget(budget: readonly BudgetShare[], most = 4): string {
  return budget
    .filter((line) => line.share >= 0.005)
    .slice(0, most)
    .map((line) => `${line.name} ${formatPercent(line.share, false)}`)
    .join(", ");
}

/** A number that must be told to six digits at most, for laws. */
export function tellParameter(value: number): string {
  return formatNumber(value, 6);
}

/** "-0.4": standard deviations, to a tenth */
export function tellDeviations(value: number): string {
  const text = value.toFixed(1);
  return text === "-0.0" ? "0.0" : text.replace("-", MINUS);
}
