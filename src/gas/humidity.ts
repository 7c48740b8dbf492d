/**
 * Humidity conversions: relative humidity, dew point, vapour pressure, humidity ratio (mixing ratio).
 *
 * Equation    e = h f p_s(T)                          vapour pressure from relative humidity                    (1)
 *             w = (M_w/M_a) e / (p - e)               humidity ratio                                            (2)
 *             f = 1.00062 + 3.14e-8 p + 5.6e-7 t^2    enhancement of real moist air                              (3)
 * Symbols     e Pa | h 1 | T K | t degC | p Pa | w kg water per kg dry air | M kg/mol
 * Validity    0 <= h <= 1, T from 173.15 to 373.15 K, e < p (asserted). (3) was fitted for 0 to 27 degC; it is used to 100 degC, where
 *             the humidity ratio of saturated air stays within 1 % of the tables (tested to 50 degC)
 * Source      [picard2008] for (3), [ashrae2017] ch. 1 for (2)     Check published/ashrae2017.test.ts, published/cfr1066.test.ts
 */
import { findRoot, requireWithin } from "../numerics/index.ts";
import { AIR_WATER_MOLAR_RATIO, ZERO_CELSIUS } from "../quantities/index.ts";
import { CIPM_2007 } from "./cipm-density.ts";
import { saturationPressure } from "./saturation-pressure.ts";

export const HUMIDITY_TEMPERATURES = { low: 173.15, high: 373.15 } as const;

/** (3): how much more vapour saturated real air holds than the vapour alone would. */
export function enhancementFactor(pressure: number, temperature: number): number {
  const t = temperature - ZERO_CELSIUS;
  const [base, byPressure, byTemperature] = CIPM_2007.enhancement;
  return base + byPressure * pressure + byTemperature * t * t;
}

/** Humidity ratio from the partial pressure of the vapour, (2). */
export function humidityRatioFromVapourPressure(vapourPressure: number, pressure: number): number {
  requireWithin("vapour pressure", vapourPressure, 0, pressure * (1 - Number.EPSILON));
  return vapourPressure / (AIR_WATER_MOLAR_RATIO * (pressure - vapourPressure));
}

export function vapourPressureFromHumidityRatio(humidityRatio: number, pressure: number): number {
  requireWithin("humidity ratio", humidityRatio, 0, 10);
  return pressure * waterMoleFraction(humidityRatio);
}

export type RelativeHumidityState = {
  readonly relativeHumidity: number;
  readonly temperature: number;
  readonly pressure: number;
};

export function humidityRatioFromRelativeHumidity(state: RelativeHumidityState): number {
  const { relativeHumidity, temperature, pressure } = state;
  requireWithin("relative humidity", relativeHumidity, 0, 1);
  return humidityRatioFromVapourPressure(relativeHumidity * saturatedVapourPressure(temperature, pressure), pressure);
}

export function relativeHumidityFromHumidityRatio(state: {
  readonly humidityRatio: number;
  readonly temperature: number;
  readonly pressure: number;
}): number {
  const { humidityRatio, temperature, pressure } = state;
  return vapourPressureFromHumidityRatio(humidityRatio, pressure) / saturatedVapourPressure(temperature, pressure);
}

export function humidityRatioFromDewPoint(dewPoint: number, pressure: number): number {
  return humidityRatioFromVapourPressure(saturatedVapourPressure(dewPoint, pressure), pressure);
}

/** Temperature at which air of this humidity ratio becomes saturated; null where it is drier than any dew point in range. */
export function dewPointFromHumidityRatio(humidityRatio: number, pressure: number): number | null {
  const wanted = vapourPressureFromHumidityRatio(humidityRatio, pressure);
  const { low, high } = HUMIDITY_TEMPERATURES;
  const outcome = findRoot((t) => Math.log(saturatedVapourPressure(t, pressure) / wanted), { low, high });
  return outcome.status === "found" ? outcome.root : null;
}

/** Share of the molecules that are water: 1.608 w / (1 + 1.608 w). */
export function waterMoleFraction(humidityRatio: number): number {
  const moles = AIR_WATER_MOLAR_RATIO * humidityRatio;
  return moles / (1 + moles);
}

/** Mass of dry air in a mass of moist air: 1 / (1 + w). */
export function dryAirShare(humidityRatio: number): number {
  requireWithin("humidity ratio", humidityRatio, 0, 10);
  return 1 / (1 + humidityRatio);
}

function saturatedVapourPressure(temperature: number, pressure: number): number {
  requireWithin("temperature", temperature, HUMIDITY_TEMPERATURES.low, HUMIDITY_TEMPERATURES.high);
  return enhancementFactor(pressure, temperature) * saturationPressure(temperature);
}
