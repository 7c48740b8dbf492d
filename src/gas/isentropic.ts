/**
 * Isentropic relations of an ideal gas between rest and Mach number M, and the speed of sound.
 *
 * Equation    T/T0 = 1/(1 + (g-1)/2 M^2),   p/p0 = (T/T0)^(g/(g-1)),   rho/rho0 = (T/T0)^(1/(g-1))                 (1)
 *             A/A* = (1/M) ((2/(g+1)) (1 + (g-1)/2 M^2))^((g+1)/(2(g-1)))                                       (2)
 *             a = sqrt(g R T)                                                                                  (3)
 * Symbols     M Mach number 1 | g ratio of specific heats 1 | A/A* area over throat area 1 | a m/s | R J/(kg K) | T K
 * Validity    M >= 0, g > 1, T > 0 (asserted); A/A* needs M > 0
 * Source      [naca1135]                                                     Check published/naca1135.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";
import { GAMMA_AIR, GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";

export type IsentropicRatios = {
  readonly temperature: number;
  readonly pressure: number;
  readonly density: number;
};

/** (1): static over total. */
export function isentropicRatios(machNumber: number, gamma: number = GAMMA_AIR): IsentropicRatios {
  requireWithin("Mach number", machNumber, 0, Number.MAX_VALUE);
  requirePositive("ratio of specific heats less one", gamma - 1);
  const temperature = 1 / (1 + ((gamma - 1) / 2) * machNumber * machNumber);
  return {
    temperature,
    pressure: temperature ** (gamma / (gamma - 1)),
    density: temperature ** (1 / (gamma - 1)),
  };
}

/** (2) */
export function isentropicAreaRatio(machNumber: number, gamma: number = GAMMA_AIR): number {
  requirePositive("Mach number", machNumber);
  const { temperature } = isentropicRatios(machNumber, gamma);
  return (2 / (gamma + 1) / temperature) ** ((gamma + 1) / (2 * (gamma - 1))) / machNumber;
}

/** The inverse of (1): Mach number from static over total pressure. */
export function machNumberOfPressureRatio(pressureRatio: number, gamma: number = GAMMA_AIR): number {
  requireWithin("pressure ratio", pressureRatio, Number.MIN_VALUE, 1);
  const rise = Math.expm1((-(gamma - 1) / gamma) * Math.log(pressureRatio));
  return Math.sqrt((2 / (gamma - 1)) * rise);
}

/** (3) */
export function speedOfSound(
  temperature: number,
  gamma: number = GAMMA_AIR,
  gasConstant: number = GAS_CONSTANT_DRY_AIR,
): number {
  requirePositive("temperature", temperature);
  return Math.sqrt(gamma * gasConstant * temperature);
}
