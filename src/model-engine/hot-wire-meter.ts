/**
 * A heated element by King's law, and what fouling does to its signal.
 *
 * Equation    U^2 = A + B m^n, n = 1/2                                                                            (1)
 *             fouled: U^2 = (1 + a) q/(1 + r (1 + a) q), q = A + B m^n: added area a, added thermal resistance r    (2)
 * Symbols     U V | m kg/s of moist air | A, B from the ends of the curve
 * Validity    m >= 0: a wire does not sense direction
 * Assumes     (2) with a and r such that the error is zero at idle flow and as planted at 70 % of the largest flow
 * Source      [king1914] for (1); (2) common practice, no source             Check hot-wire-meter.test.ts
 */
import type { HeatedDesign } from "./engine-design.ts";

const EXPONENT = 0.5;

export type KingLaw = { readonly atRest: number; readonly slope: number };

export function kingLaw(meter: HeatedDesign): KingLaw {
  const atRest = meter.voltageAtRest ** 2;
  return { atRest, slope: (meter.largestVoltage ** 2 - atRest) / meter.largestFlow ** EXPONENT };
}

export function voltageOf(law: KingLaw, massFlow: number): number {
  return Math.sqrt(law.atRest + law.slope * Math.max(0, massFlow) ** EXPONENT);
}

/** Inverse of `voltageOf`: zero at and below the voltage at rest. */
export function flowOf(law: KingLaw, voltage: number): number {
  return (Math.max(0, voltage * voltage - law.atRest) / law.slope) ** (1 / EXPONENT);
}

/** (2): 1/q' = 1/((1 + a) q) + r through two points gives 1/(1 + a) and r in closed form. */
export function fouling(
  law: KingLaw,
  errorAt70: number,
  flows: { readonly idle: number; readonly largest: number },
): (voltage: number) => number {
  if (errorAt70 === 0) return (voltage) => voltage;
  const high = 0.7 * flows.largest;
  const q = (massFlow: number) => voltageOf(law, massFlow) ** 2;
  const clean = [1 / q(flows.idle), 1 / q(high)] as const;
  const fouled = [1 / q(flows.idle), 1 / q(high * (1 + errorAt70))] as const;
  const areaInverse = (fouled[0] - fouled[1]) / (clean[0] - clean[1]);
  const resistance = fouled[0] - areaInverse * clean[0];
  return (voltage) => 1 / Math.sqrt(areaInverse / (voltage * voltage) + resistance);
}
