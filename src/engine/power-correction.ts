/**
 * Factors that bring measured full-load power to reference air.
 *
 * Equation    SAE J1349 (June 1990), spark: 1.180 (990/p_d) sqrt((t + 273)/298) - 0.18                            (1)
 *             ISO 1585, spark:              (99/p_s)^1.2 (T/298)^0.6                                              (2)
 *             ISO 1585, compression:        f_a^f_m,  f_m = 0.036 q_c - 1.14 for 40 <= q_c <= 65, 0.3 below, 1.2 above
 *                                           f_a = (99/p_s)(T/298)^0.7 natural, (99/p_s)^0.7 (T/298)^1.5 turbocharged (3)
 *             DIN 70020:                    (1013/p) sqrt((273 + t)/293)                                          (4)
 * Symbols     p_d, p_s dry pressure (mbar in (1), kPa in (2), (3)) | p mbar | t degC | T K | q_c mg of fuel per litre and cycle,
 *             over the boost pressure ratio. The functions take Pa and K
 * Validity    p, T > 0 (asserted); the standards allow 0.93 to 1.07 (spark), 0.9 to 1.1 (compression)
 * Source      [j1349] as quoted, [iso1585] spark exponents from memory, [din70020] from memory
 * Check       published/power-correction.test.ts
 */
import { requirePositive } from "../numerics/index.ts";
import { ZERO_CELSIUS } from "../quantities/index.ts";

export type PowerAir = {
  /** Pa, of the dry air */
  readonly dryPressure: number;
  readonly temperature: number;
};

/** (1); its 273 is 273, not 273.15 */
export function powerCorrectionJ1349({ dryPressure, temperature }: PowerAir): number {
  check(dryPressure, temperature);
  const kelvin = temperature - ZERO_CELSIUS + 273;
  return (1.18 * 99_000 * Math.sqrt(kelvin / 298)) / dryPressure - 0.18;
}

/** (2) */
export function powerCorrectionIso1585Spark({ dryPressure, temperature }: PowerAir): number {
  check(dryPressure, temperature);
  return (99_000 / dryPressure) ** 1.2 * (temperature / 298) ** 0.6;
}

/** (3) */
export function powerCorrectionIso1585Compression(
  air: PowerAir & { readonly fuelPerLitreAndCycle: number; readonly charging: "natural" | "turbocharged" },
): { readonly airFactor: number; readonly engineFactor: number; readonly correction: number } {
  const { dryPressure, temperature, fuelPerLitreAndCycle: qc, charging } = air;
  check(dryPressure, temperature);
  const airFactor =
    charging === "natural"
      ? (99_000 / dryPressure) * (temperature / 298) ** 0.7
      : (99_000 / dryPressure) ** 0.7 * (temperature / 298) ** 1.5;
  const engineFactor = qc < 40 ? 0.3 : qc > 65 ? 1.2 : 0.036 * qc - 1.14;
  return { airFactor, engineFactor, correction: airFactor ** engineFactor };
}

/** (4), of the moist barometric pressure; withdrawn, kept for old data sheets */
export function powerCorrectionDin70020(pressure: number, temperature: number): number {
  check(pressure, temperature);
  return (101_300 / pressure) * Math.sqrt((temperature - ZERO_CELSIUS + 273) / 293);
}

function check(pressure: number, temperature: number): void {
  requirePositive("pressure", pressure);
  requirePositive("temperature", temperature);
}
