/**
 * Density of moist air by the CIPM-2007 formula, the reference of mass metrology.
 *
 * Equation    rho = p M_a/(Z R T) (1 - x_v (1 - M_v/M_a)),   x_v = h f p_sv/p                                        (1)
 *             Z = 1 - p/T (a0 + a1 t + a2 t^2 + (b0 + b1 t) x_v + (c0 + c1 t) x_v^2) + (p/T)^2 (d + e x_v^2)          (2)
 *             M_a = 28.96546e-3 + 12.011e-3 (x_CO2 - 0.0004)                                                        (3)
 * Symbols     rho kg/m3 | p Pa | T K | t degC | h relative humidity 1 | x_CO2 mole fraction | f, p_sv as in the source
 * Validity    15 to 27 degC, 60 to 110 kPa: there the formula's own standard uncertainty is 22e-6. Outside, the value is computed and
 *             `insideRange` says false
 * Source      [picard2008] App. A.1 (all constants its own, R of CODATA 2006 included)      Check published/picard2008.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";
import { MOLAR_MASS_DRY_AIR, MOLAR_MASS_WATER, ZERO_CELSIUS } from "../quantities/index.ts";

/** The constants, so that a check can move one of them. */
export const CIPM_2007 = {
  gasConstant: 8.314472,
  saturation: [1.2378847e-5, -1.9121316e-2, 33.93711047, -6.3431645e3],
  enhancement: [1.00062, 3.14e-8, 5.6e-7],
  a: [1.58123e-6, -2.9331e-8, 1.1043e-10],
  b: [5.707e-6, -2.051e-8],
  c: [1.9898e-4, -2.376e-6],
  d: 1.83e-11,
  e: -0.765e-8,
} as const;
export type CipmConstants = {
  readonly [key in keyof typeof CIPM_2007]: (typeof CIPM_2007)[key] extends number ? number : readonly number[];
};

export type CipmInput = {
  readonly pressure: number;
  readonly temperature: number;
  readonly relativeHumidity: number;
  /** mole fraction; 0.0004 where not measured */
  readonly carbonDioxide?: number;
};

export type CipmDensity = {
  readonly density: number;
  readonly compressibility: number;
  readonly saturationPressure: number;
  readonly enhancement: number;
  readonly waterMoleFraction: number;
  readonly insideRange: boolean;
  /** of the formula alone; null outside its range */
  readonly relativeStandardUncertainty: number | null;
};

export function cipmDensity(input: CipmInput, constants: CipmConstants = CIPM_2007): CipmDensity {
  const { pressure: p, temperature: kelvin, relativeHumidity: h } = input;
  requirePositive("pressure", p);
  requirePositive("temperature", kelvin);
  requireWithin("relative humidity", h, 0, 1);
  const t = kelvin - ZERO_CELSIUS;
  const [sA = 0, sB = 0, sC = 0, sD = 0] = constants.saturation;
  const [alpha = 0, beta = 0, gamma = 0] = constants.enhancement;
  const [a0 = 0, a1 = 0, a2 = 0] = constants.a;
  const [b0 = 0, b1 = 0] = constants.b;
  const [c0 = 0, c1 = 0] = constants.c;
  const saturation = Math.exp(sA * kelvin * kelvin + sB * kelvin + sC + sD / kelvin);
  const enhancement = alpha + beta * p + gamma * t * t;
  const x = (h * enhancement * saturation) / p;
  const pOverT = p / kelvin;
  const z =
    1 -
    pOverT * (a0 + a1 * t + a2 * t * t + (b0 + b1 * t) * x + (c0 + c1 * t) * x * x) +
    pOverT * pOverT * (constants.d + constants.e * x * x);
  const molarMass = MOLAR_MASS_DRY_AIR + 12.011e-3 * ((input.carbonDioxide ?? 0.0004) - 0.0004);
  const density =
    ((p * molarMass) / (z * constants.gasConstant * kelvin)) * (1 - x * (1 - MOLAR_MASS_WATER / molarMass));
  const insideRange = t >= 15 && t <= 27 && p >= 60_000 && p <= 110_000;
  return {
    density,
    compressibility: z,
    saturationPressure: saturation,
    enhancement,
    waterMoleFraction: x,
    insideRange,
    relativeStandardUncertainty: insideRange ? 22e-6 : null,
  };
}
