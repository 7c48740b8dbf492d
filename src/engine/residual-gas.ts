/**
 * How the gas left in the cylinder takes the place of fresh charge: the law of the ideal four-stroke cycle.
 *
 * Equation    f = r/(r - 1) - (p_e/p_i + g - 1)/(g (r - 1))                                                      (1)
 * Symbols     f volumetric efficiency referred to the manifold, 1 at p_e = p_i | r compression ratio | p_e, p_i Pa exhaust and
 *             intake pressure | g ratio of specific heats of the charge, 1
 * Validity    r > 1, 0 < p_e/p_i < 1 + g (r - 1) where f reaches zero (asserted r, p_e/p_i > 0; f is not cut off at zero)
 * Assumes     valves change at the dead centres, no heat or flow losses: a real engine follows a share of it, which is why the
 *             inference gives the law an uncertain strength
 * Source      [heywood1988] eq. (6.2), section 5.7.1                         Check published/heywood1988.test.ts
 */
import { requirePositive } from "../numerics/index.ts";

/** 1, of a petrol-air charge with residual gas [heywood1988] section 6.2 */
export const GAMMA_CHARGE = 1.3;

export type ResidualGasState = {
  readonly exhaustOverIntakePressure: number;
  readonly compressionRatio: number;
  readonly gamma?: number;
};

/** (1): factor on the volumetric efficiency referred to the manifold, relative to equal pressures. */
export function residualGasFactor(state: ResidualGasState): number {
  const { exhaustOverIntakePressure, compressionRatio: r, gamma = GAMMA_CHARGE } = state;
  requirePositive("exhaust over intake pressure", exhaustOverIntakePressure);
  requirePositive("compression ratio less one", r - 1);
  return r / (r - 1) - (exhaustOverIntakePressure + gamma - 1) / (gamma * (r - 1));
}

/**
 * Mass share of residual gas in the charge of the ideal cycle: what the clearance volume holds when the exhaust valve closes.
 *
 *     x = m_r/(m_r + m_f),   m_r/m_f = (p_e/T_e) V_c / (eta_i p_i/T_i (r - 1) V_c) = (p_e/p_i)(T_i/T_e)/(f (r - 1))    (2)
 *
 * with f of (1); T_e the temperature of the gas left behind, T_i of the charge. Without valve overlap: overlap adds to it at high
 * vacuum, up to twice as much (common practice).
 */
export function residualGasFraction(
  state: ResidualGasState & { readonly chargeTemperature: number; readonly residualTemperature: number },
): number {
  const factor = residualGasFactor(state);
  requirePositive("volumetric efficiency of the ideal cycle", factor);
  requirePositive("residual temperature", state.residualTemperature);
  const ratio =
    (state.exhaustOverIntakePressure * state.chargeTemperature) /
    (state.residualTemperature * factor * (state.compressionRatio - 1));
  return ratio / (1 + ratio);
}
