/**
 * airtally meter ambient: what altitude, heat, humidity and tilt do to the mass this kind of meter reads, and so to the mixture
 * before any closed-loop correction (meters/environment-table.ts).
 *
 * Altitude    standard atmosphere from the sea-level temperature of the curve's air, so that height alone is told
 * Heat        temperature alone, at the pressure of the curve's air
 * Humidity    at the curve's air: dosing counts the vapour as air, only the dry part burns
 * Tilt        of a vane, at three openings. By angle: added torque = flap torque x sin(tilt), meters/vane/vane-law.ts (1) for a
 *             balanced flap; else the torque itself
 */
import type { MeterKind } from "../../engine/index.ts";
import type { MoistAir } from "../../gas/index.ts";
import {
  altitudeCases,
  type Compensation,
  type EnvironmentCase,
  type EnvironmentRow,
  environmentTable,
  heatCases,
  type MeterEnvironment,
  tiltCases,
} from "../../meters/index.ts";
import { fromSi, type Result, success, unit } from "../../quantities/index.ts";
import { round } from "../outcome/points.ts";
import { moistAir } from "./air-at-meter.ts";
import { type AmbientOptions, type AmbientSettings, readAmbientOptions } from "./ambient-options.ts";
import { type AmbientSource, readAmbientSource } from "./ambient-source.ts";
import { ambientHeadline, ambientWarnings } from "./ambient-words.ts";
import { factsOf } from "./curve.ts";
import { curveAirSheet } from "./identity.ts";
import type { MeterChoice, NamedText } from "./read-source.ts";
import type { AmbientSheet } from "./result/meter-result-schema.ts";

export type MeterAmbientInput = MeterChoice & {
  /** null: the kind alone says it */
  readonly file: NamedText | null;
  readonly options: AmbientOptions;
  readonly toolVersion: string;
};

type Row = AmbientSheet["altitude"][number];

const HUMIDITIES = [0, 0.5, 1];
const OPENINGS = [0.1, 0.5, 1];
const TORQUES = [-0.1, -0.05, 0.05, 0.1];
const STANDARD_SEA_LEVEL = 288.15;

export function meterAmbient(input: MeterAmbientInput): Result<AmbientSheet> {
  const source = readAmbientSource(input.file, input);
  if (!source.ok) return source;
  const { kind, curveAir } = source.value;
  const settings = readAmbientOptions(input.options, source.value);
  if (!settings.ok) return settings;
  const humidity = humidityCases(source.value);
  if (!humidity.ok) return humidity;
  const calibration: MoistAir = { pressure: curveAir.pressure, temperature: curveAir.temperature, humidityRatio: 0 };
  const compensations = compensationsOf(kind, input.options.compensation);
  const seaLevel = settings.value.seaLevelTemperature ?? curveAir.temperature;
  const environment = environmentOf(kind, calibration, settings.value);
  const rows = (cases: readonly EnvironmentCase[], altitudes: readonly number[] | null) =>
    ambientRows(environment, compensations, cases).map((row, i) => ({ ...row, altitude_m: altitudes?.[i] ?? null }));
  const { altitudes, temperatures } = settings.value;
  const sheet: Omit<AmbientSheet, "headline" | "warnings"> = {
    format: "airtally-meter/1",
    kind: "ambient",
    toolVersion: input.toolVersion,
    file: source.value.file,
    meterKind: kind,
    facts: factsOf(kind),
    curveAir: curveAirSheet(curveAir),
    compensations: [...compensations],
    altitude: rows(altitudeCases(altitudes, seaLevel - STANDARD_SEA_LEVEL), altitudes),
    heat: rows(heatCases(calibration, temperatures), null),
    humidity: rows(humidity.value, null).map((row, i) => ({ ...row, relativeHumidity: HUMIDITIES[i]! })),
    tilt: kind === "vane" ? tiltRows(environment, calibration, settings.value) : [],
  };
  return success({
    ...sheet,
    headline: ambientHeadline(sheet),
    warnings: ambientWarnings(sheet, source.value, settings.value),
  });
}

/** The columns: what engine computers do about density, from nothing to all; one where density does not matter. */
function compensationsOf(kind: MeterKind, stated: Compensation | undefined): readonly Compensation[] {
  if (stated !== undefined) return [stated];
  return kind === "vane" || kind === "vortex" ? ["none", "temperature", "temperature-and-pressure"] : ["none"];
}

function environmentOf(kind: MeterKind, calibration: MoistAir, settings: AmbientSettings): MeterEnvironment {
  const { wire, filmCoefficient } = settings;
  return {
    kind,
    compensation: "none",
    calibration,
    ...(wire === null || wire === undefined ? {} : { wire }),
    ...(filmCoefficient === null ? {} : { filmCoefficient }),
  };
}

function ambientRows(
  environment: MeterEnvironment,
  compensations: readonly Compensation[],
  cases: readonly EnvironmentCase[],
): Row[] {
  const tables = compensations.map((compensation) => environmentTable({ ...environment, compensation }, cases));
  return cases.map((one, i) => ({
    altitude_m: null,
    pressure_kPa: round(one.air.pressure / 1000),
    temperature_degC: round(fromSi(one.air.temperature, unit("degC"))),
    relativeHumidity: 0,
    readings: compensations.map((compensation, j) => ({ compensation, ...readingOf(tables[j]![i]!) })),
  }));
}

function humidityCases({ curveAir }: AmbientSource): Result<EnvironmentCase[], "humidity-invalid"> {
  const cases: EnvironmentCase[] = [];
  for (const relativeHumidity of HUMIDITIES) {
    const air = moistAir(curveAir.pressure, curveAir.temperature, relativeHumidity);
    if (!air.ok) return air;
    cases.push({ label: `${100 * relativeHumidity} %`, air: air.value });
  }
  return success(cases);
}

function tiltRows(
  environment: MeterEnvironment,
  calibration: MoistAir,
  settings: AmbientSettings,
): AmbientSheet["tilt"] {
  const { flapTorque, preload, tilts } = settings;
  const angles = flapTorque === null ? null : tilts;
  const torques = angles === null ? TORQUES : angles.map((angle) => (flapTorque ?? 0) * Math.sin(angle));
  const cases = tiltCases(calibration, torques);
  const tables = OPENINGS.map((opening) =>
    environmentTable(
      { ...environment, vane: preload === null ? { opening } : { opening, preloadShare: preload } },
      cases,
    ),
  );
  return torques.map((torqueError, i) => ({
    torqueError: round(torqueError),
    tilt_deg: angles === null ? null : round(fromSi(angles[i]!, unit("deg"))),
    readings: OPENINGS.map((opening, j) => ({ opening, ...readingOf(tables[j]![i]!) })),
  }));
}

function readingOf({ readingOverTruth, lambdaRatio }: EnvironmentRow) {
  return {
    readingOverTruth: readingOverTruth === null ? null : round(readingOverTruth),
    lambdaRatio: lambdaRatio === null ? null : round(lambdaRatio),
  };
}
