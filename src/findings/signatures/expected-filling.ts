/**
 * What the tally makes of a pressure and a temperature: a wrong reading moves the expectation of breathing with it, not only the
 * density.
 *
 * Equation    ln P = ln p + s ln f(p_e/p) - ln T_c(T_i, m) + ...
 * Symbols     f residual-gas factor of the ideal cycle, s its expected strength | p_e, p Pa exhaust and manifold | T_c K charge, warmed on its
 *             way from T_i at the sensor towards the coolant
 * Source      the mean of breathing of the tally [heywood1988] 6.2; engine/charge-temperature
 */
import { chargeTemperature, residualGasFactor } from "../../engine/index.ts";
import { findReading, type TallyModel } from "../../tally/index.ts";

/** compression ratios where none is stated, and the bound of the law, as the tally has them */
const COMPRESSION = { spark: 10, compression: 17 } as const;
const LARGEST_RATIO = 5;
/** K, where not recorded */
const COOLANT_WARM = 363;

/** ln p + s ln f(p_e/p) at a point, with this pressure and this exhaust pressure */
export function logOfPressure(model: TallyModel, pressure: number, exhaustPressure: number): number {
  const { engine, assumptions } = model;
  const factor = residualGasFactor({
    exhaustOverIntakePressure: Math.min(LARGEST_RATIO, exhaustPressure / pressure),
    compressionRatio: engine.compressionRatio ?? COMPRESSION[engine.ignition],
  });
  return Math.log(pressure) + assumptions.residualStrength * Math.log(factor);
}

/** ln T_c at a point, with this temperature at the sensor */
export function logOfTemperature({ points, physics }: TallyModel, i: number, temperature: number): number {
  const coolant = findReading(points[i]!, "coolantTemperature", null)?.mean ?? COOLANT_WARM;
  const massFlow = Math.max(physics.air[i]!, 1e-4);
  return Math.log(chargeTemperature({ intakeTemperature: temperature, coolantTemperature: coolant, massFlow }));
}
