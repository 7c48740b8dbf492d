/**
 * Second virial coefficient of dry and moist air.
 *
 * Equation    B = x_a^2 B_aa + 2 x_a x_w B_aw + x_w^2 B_ww                                                       (1)
 *             B_aa = 34.9568 - 6687.72/T - 2.10141e6/T^2 + 9.24746e7/T^3                       cm3/mol            (2)
 *             B_aw = 32.366097 - 14113.8/T - 1.244535e6/T^2 - 2.348789e9/T^4                   cm3/mol            (3)
 *             B_ww = R T (0.7e-8 - 0.147184e-8 exp(1734.29/T))                                 m3/mol             (4)
 * Symbols     T K | x mole fraction of air a, water w
 * Validity    173 to 473 K
 * Source      [hyland1983] eqs. (10), (14), (15), table 1                     Check published/hyland1983.test.ts
 */
import { MOLAR_GAS_CONSTANT } from "../quantities/index.ts";

/** (2), m3/mol */
export function dryAirVirial(t: number): number {
  return (34.9568 + (-6687.72 + (-2.10141e6 + 9.24746e7 / t) / t) / t) * 1e-6;
}

/** (1), m3/mol */
export function moistAirVirial(t: number, waterMoleFraction: number): number {
  const xw = waterMoleFraction;
  const xa = 1 - xw;
  if (xw === 0) return dryAirVirial(t);
  const cross = (32.366097 + (-14113.8 + (-1.244535e6 - 2.348789e9 / (t * t)) / t) / t) * 1e-6;
  const water = MOLAR_GAS_CONSTANT * t * (0.7e-8 - 0.147184e-8 * Math.exp(1734.29 / t));
  return xa * xa * dryAirVirial(t) + 2 * xa * xw * cross + xw * xw * water;
}
