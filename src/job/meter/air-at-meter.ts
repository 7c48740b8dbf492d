/** Air at the meter: what the call states, else the engine file's site, else the air of the curve. */
import {
  enhancementFactor,
  HUMIDITY_TEMPERATURES,
  humidityRatioFromRelativeHumidity,
  idealMoistAirDensity,
  type MoistAir,
  saturationPressure,
} from "../../gas/index.ts";
import { failure, fromSi, type Result, success, unit } from "../../quantities/index.ts";
import { round } from "../outcome/points.ts";
import { type OptionTexts, readOptions } from "./option-values.ts";
import type { MeterSource } from "./read-source.ts";
import type { MeterConversion } from "./result/meter-result-schema.ts";

export type AirOptions = OptionTexts<"pressure" | "temperature" | "humidity">;
type AirSheet = MeterConversion["air"];
export type AirAtMeter = { readonly air: MoistAir; readonly sheet: AirSheet };

const AIR_RULES = {
  pressure: { dimension: "pressure", low: 20_000, high: 400_000, unit: "kPa" },
  temperature: { dimension: "temperature", low: 213.15, high: 423.15, unit: "degC" },
  humidity: { dimension: "ratio", low: 0, high: 1, unit: "%" },
} as const;

/** `site` false: the curve as it stands, unless the call states an air. */
export function airAtMeter(
  source: Pick<MeterSource, "site" | "curveAir">,
  options: AirOptions,
  withSite: boolean,
): Result<AirAtMeter, "option-invalid"> {
  const stated = readOptions(options, AIR_RULES);
  if (!stated.ok) return stated;
  const { curveAir } = source;
  const site = withSite ? source.site : { pressure: null, temperature: null };
  const curveOrigin = curveAir.assumed ? ("assumed" as const) : ("curve" as const);
  const choose = (key: "pressure" | "temperature") => ({
    value: stated.value[key] ?? site[key] ?? curveAir[key],
    from:
      stated.value[key] !== null ? ("stated" as const) : site[key] !== null ? ("engine file" as const) : curveOrigin,
  });
  const [pressure, temperature] = [choose("pressure"), choose("temperature")];
  const air = moistAir(pressure.value, temperature.value, stated.value.humidity ?? 0);
  if (!air.ok) return failure("option-invalid", air.message, air.remedy);
  return success({
    air: air.value,
    sheet: {
      pressure_kPa: round(pressure.value / 1000),
      temperature_degC: round(fromSi(temperature.value, unit("degC"))),
      relativeHumidity: round(stated.value.humidity ?? 0),
      density_kg_per_m3: round(idealMoistAirDensity(air.value)),
      pressureFrom: pressure.from,
      temperatureFrom: temperature.from,
    },
  });
}

/** Air of a relative humidity, where that can be: below the boiling of its vapour, within the formulas of humidity. */
export function moistAir(
  pressure: number,
  temperature: number,
  relativeHumidity: number,
): Result<MoistAir, "humidity-invalid"> {
  if (relativeHumidity === 0) return success({ pressure, temperature, humidityRatio: 0 });
  const { low, high } = HUMIDITY_TEMPERATURES;
  const celsius = Number(fromSi(temperature, unit("degC")).toFixed(2));
  if (!(temperature >= low && temperature <= high)) {
    return failure(
      "humidity-invalid",
      `A relative humidity has no meaning here at ${celsius} degC.`,
      `Leave it out, or give a temperature from ${low - 273.15} to ${high - 273.15} degC.`,
    );
  }
  const vapour = relativeHumidity * saturationPressure(temperature) * enhancementFactor(pressure, temperature);
  if (!(vapour < MOST_VAPOUR * pressure)) {
    return failure(
      "humidity-invalid",
      `Air of ${Number((100 * relativeHumidity).toFixed(1))} % humidity at ${celsius} degC would be mostly vapour at this pressure.`,
      "Check humidity, temperature and pressure.",
    );
  }
  const humidityRatio = humidityRatioFromRelativeHumidity({ relativeHumidity, temperature, pressure });
  return success({ pressure, temperature, humidityRatio });
}

/** share of the pressure: above it a humidity ratio is beyond anything an engine breathes (0.6 kg/kg) */
const MOST_VAPOUR = 0.5;
