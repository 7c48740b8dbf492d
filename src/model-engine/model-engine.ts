/** A model engine: its drawing and its parts; and the air around it. */
import { humidityRatioFromRelativeHumidity, standardAtmosphere } from "../gas/index.ts";
import type { EngineDesign } from "./engine-design.ts";
import type { EngineParts } from "./engine-parts.ts";

export type ModelEngine = { readonly name: string; readonly design: EngineDesign; readonly parts: EngineParts };

export type Ambient = {
  /** Pa, K */
  readonly pressure: number;
  readonly temperature: number;
  /** kg of water per kg of dry air */
  readonly humidityRatio: number;
};

/** The standard atmosphere's pressure at an altitude, with a temperature and humidity of its own. */
export function ambientAt(place: {
  readonly altitude: number;
  readonly temperature: number;
  readonly relativeHumidity: number;
}): Ambient {
  const { pressure } = standardAtmosphere(place.altitude);
  const { temperature, relativeHumidity } = place;
  return {
    pressure,
    temperature,
    humidityRatio: humidityRatioFromRelativeHumidity({ pressure, temperature, relativeHumidity }),
  };
}
