/**
 * Density of moist air by the short form of CIPM-2007, good enough for a workshop bench.
 *
 * Equation    rho = (0.34848 p - 0.009 h exp(0.061 t)) / (273.15 + t)                                             (1)
 * Symbols     rho kg/m3 | p hPa | h relative humidity in per cent | t degC (the function takes Pa, 1 and K)
 * Validity    90 to 110 kPa, 10 to 30 degC, h below 80 %: there within 3e-4 of CIPM-2007 (tested). Outside, a `Result` that says so
 * Source      [oiml-r111] Annex E eq. (E.3-1)                                Check published/picard2008.test.ts
 */
import { failure, type Result, success, ZERO_CELSIUS } from "../quantities/index.ts";
import type { CipmInput } from "./cipm-density.ts";

export function approximateMoistAirDensity(
  input: Omit<CipmInput, "carbonDioxide">,
): Result<number, "outside-validity"> {
  const { pressure, temperature, relativeHumidity } = input;
  const t = temperature - ZERO_CELSIUS;
  const inside = pressure >= 90_000 && pressure <= 110_000 && t >= 10 && t <= 30 && relativeHumidity >= 0;
  if (!inside || relativeHumidity > 0.8) {
    return failure(
      "outside-validity",
      `The short density formula does not hold at ${pressure} Pa, ${temperature} K, relative humidity ${relativeHumidity}.`,
      "Use it from 90 to 110 kPa, 10 to 30 degC and below 80 % humidity, or use the full formula.",
    );
  }
  return success((0.34848 * (pressure / 100) - 0.009 * (relativeHumidity * 100) * Math.exp(0.061 * t)) / temperature);
}
