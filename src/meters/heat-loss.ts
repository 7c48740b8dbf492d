/**
 * Heat lost by a thin wire or film to a stream: correlations of the Nusselt number.
 *
 * Equation    King (1914)             Nu = 1/pi + sqrt(2 Re Pr/pi)                                              (1)
 *             Collis and Williams     Nu (T_m/T_a)^-0.17 = 0.24 + 0.56 Re^0.45   0.02 < Re < 44
 *                                                        = 0.48 Re^0.51          44 <= Re < 140                 (2)
 *             Kramers                 Nu = 0.42 Pr^0.20 + 0.57 Pr^0.33 Re^0.50   0.01 < Re < 1e4                (3)
 * Symbols     Nu = Q/(pi k l dT) | Re = rho U d/mu | Pr 1 | T_m mean of wire and air, K | T_a air, K. Properties at T_m
 * Validity    as above; `inside` false outside. (1) is potential flow: high at large Re. (2) jumps by 2 % at Re = 44
 * Source      [king1914], [collis1959] table 3, [kramers1946]; coefficients from memory, (2) confirmed on digitised points
 * Check       published/hot-wire.test.ts
 */
import { requireWithin } from "../numerics/index.ts";

export type Nusselt = { readonly nusselt: number; readonly inside: boolean };

export function kingNusselt(reynolds: number, prandtl: number): Nusselt {
  requireWithin("Reynolds number", reynolds, 0, Number.MAX_VALUE);
  return { nusselt: 1 / Math.PI + Math.sqrt((2 / Math.PI) * reynolds * prandtl), inside: reynolds * prandtl > 0.08 };
}

/** (2); `temperatureRatio` is T_m/T_a, 1 for a barely heated wire. */
export function collisNusselt(reynolds: number, temperatureRatio = 1): Nusselt {
  requireWithin("Reynolds number", reynolds, 0, Number.MAX_VALUE);
  const isothermal = reynolds < 44 ? 0.24 + 0.56 * reynolds ** 0.45 : 0.48 * reynolds ** 0.51;
  return { nusselt: isothermal * temperatureLoading(temperatureRatio), inside: reynolds > 0.02 && reynolds < 140 };
}

export function temperatureLoading(temperatureRatio: number): number {
  return temperatureRatio ** 0.17;
}

export function kramersNusselt(reynolds: number, prandtl: number): Nusselt {
  requireWithin("Reynolds number", reynolds, 0, Number.MAX_VALUE);
  return {
    nusselt: 0.42 * prandtl ** 0.2 + 0.57 * prandtl ** 0.33 * Math.sqrt(reynolds),
    inside: reynolds > 0.01 && reynolds < 1e4,
  };
}
