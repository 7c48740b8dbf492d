/**
 * What altitude, heat, humidity and tilt do to the mass a meter reads, and so to the mixture, as a table.
 *
 * Equation    reading/truth = compensation x residual temperature x tilt                                        (1)
 *             dry air/moist air = 1/(1 + w): fuel is dosed to the moist mass, only the dry part burns               (2)
 *             lambda change = truth of dry air/air dosed for                                                     (3)
 * Symbols     w kg water a kg dry air
 * Validity    altitude -2 to 11 km; a vane's tilt by vane-tilt.ts, which takes the torque as even over the angle
 * Source      density-compensation.ts, hot-wire/wire-air-temperature.ts, hot-film/film-air-temperature.ts, vane/vane-tilt.ts
 * Check       meter-environment.test.ts
 */
import type { MeterKind } from "../engine/index.ts";
import { dryAirShare, type MoistAir, standardAtmosphere } from "../gas/index.ts";
import { type Compensation, compensationRatio } from "./density-compensation.ts";
import { filmTemperatureRatio } from "./hot-film/film-air-temperature.ts";
import { type WireGeometry, wireTemperatureRatio } from "./hot-wire/wire-air-temperature.ts";
import { vaneTorqueErrorRatio } from "./vane/vane-tilt.ts";

export type MeterEnvironment = {
  readonly kind: MeterKind;
  readonly compensation: Compensation;
  readonly calibration: MoistAir;
  /** of a wire: geometry and the flow at which the residual is told; null where not known: no residual */
  readonly wire?: { readonly geometry: WireGeometry; readonly massFlow: number };
  /** of a film: 1/K */
  readonly filmCoefficient?: number;
  /** of a vane: opening 0..1 at which tilt is told, preload share of its spring */
  readonly vane?: { readonly opening: number; readonly preloadShare?: number };
};

export type EnvironmentCase = {
  readonly label: string;
  readonly air: MoistAir;
  /** torque error over the full spring torque, vane only */
  readonly torqueError?: number;
};

export type EnvironmentRow = {
  readonly label: string;
  readonly air: MoistAir;
  /** mass read over true mass of moist air; null where the vane is held open by the tilt alone */
  readonly readingOverTruth: number | null;
  /** lambda that comes of it over the lambda meant, without closed-loop correction */
  readonly lambdaRatio: number | null;
};

export function environmentTable(meter: MeterEnvironment, cases: readonly EnvironmentCase[]): EnvironmentRow[] {
  return cases.map((one) => {
    const residual = residualRatio(meter, one);
    const compensation = compensationRatio({ ...meter, air: one.air });
    const readingOverTruth = residual === null ? null : compensation * residual;
    const dry = dryAirShare(one.air.humidityRatio) / dryAirShare(meter.calibration.humidityRatio);
    return {
      label: one.label,
      air: one.air,
      readingOverTruth,
      lambdaRatio: readingOverTruth === null ? null : dry / readingOverTruth,
    };
  });
}

/** Cases by altitude in the standard atmosphere, at `temperatureOffset` K from it. */
export function altitudeCases(altitudes: readonly number[], temperatureOffset = 0): EnvironmentCase[] {
  return altitudes.map((altitude) => {
    const { pressure, temperature } = standardAtmosphere(altitude);
    return {
      label: `${altitude} m`,
      air: { pressure, temperature: temperature + temperatureOffset, humidityRatio: 0 },
    };
  });
}

/** Cases by air temperature at the meter, all else as calibrated. */
export function heatCases(calibration: MoistAir, temperatures: readonly number[]): EnvironmentCase[] {
  return temperatures.map((temperature) => ({
    label: `${Number((temperature - 273.15).toFixed(2))} degC`,
    air: { ...calibration, temperature },
  }));
}

/** Cases by torque error of a vane, in the air of calibration. */
export function tiltCases(calibration: MoistAir, torqueErrors: readonly number[]): EnvironmentCase[] {
  return torqueErrors.map((torqueError) => ({
    label: `torque ${torqueError >= 0 ? "+" : ""}${Number((100 * torqueError).toFixed(2))} %`,
    air: calibration,
    torqueError,
  }));
}

function residualRatio(meter: MeterEnvironment, one: EnvironmentCase): number | null {
  if (meter.kind === "vane" && one.torqueError !== undefined) {
    const { opening, preloadShare } = meter.vane ?? { opening: 0.5 };
    const torqueError = one.torqueError;
    return vaneTorqueErrorRatio(
      preloadShare === undefined ? { opening, torqueError } : { opening, torqueError, preloadShare },
    );
  }
  const temperature = one.air.temperature;
  const calibrationTemperature = meter.calibration.temperature;
  if (meter.kind === "hot-wire" && meter.wire !== undefined) {
    const { geometry, massFlow } = meter.wire;
    return wireTemperatureRatio(geometry, { massFlow, airTemperature: temperature, calibrationTemperature });
  }
  if (meter.kind === "hot-film" && meter.filmCoefficient !== undefined) {
    return filmTemperatureRatio({ coefficient: meter.filmCoefficient, temperature, calibrationTemperature });
  }
  return 1;
}
