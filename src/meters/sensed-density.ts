/**
 * What each kind of meter really senses, as the power of the density that turns its reading into mass.
 *
 * Equation    m = m_cal(signal) (rho/rho_cal)^k                                                                  (1)
 *             k = 1/2 vane (senses Q sqrt(rho), a drag), 1 vortex (senses Q, a velocity), 0 wire and film (mass flux)
 * Symbols     m kg/s moist air | m_cal kg/s the curve's flow in the air it was taken in | rho kg/m3 moist air at the meter
 * Validity    steady flow; a wire or film has a residual dependence on temperature, see hot-wire/ and hot-film/
 * Source      vane: torque balance of a flap in a stream, derived in vane/vane-law.ts; vortex: Strouhal [roshko1954]; wire: [king1914]
 * Check       published/roshko1954.test.ts, published/hot-wire.test.ts
 */
import type { MeterKind } from "../engine/index.ts";

export type DensityExponent = 0 | 0.5 | 1;

const EXPONENTS: { readonly [kind in MeterKind]: DensityExponent } = {
  vane: 0.5,
  vortex: 1,
  "hot-wire": 0,
  "hot-film": 0,
};

export function sensedDensityExponent(kind: MeterKind): DensityExponent {
  return EXPONENTS[kind];
}
