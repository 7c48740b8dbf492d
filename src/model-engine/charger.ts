/**
 * Turbocharger: shaft, wastegate, the limits of the compressor's map, and the bypass from behind the cooler back to its inlet.
 *
 * Equation    P = 1 + (P_x - 1) min(s (1 - (m_c/(m_k sqrt(s)))^6), (m_c/m_s)^1.3)                    map: choke, surge     (1)
 *             ds/dt = (0.67 D (1 - 0.98 w) - s)/t,  D = (h m_e/m_o)^1.3,  h = min(1, 0.35 + 0.9/lambda)         shaft     (2)
 *             w: proportional and integral on P, looked ahead, over the wanted ratio, then the lag of the actuator     wastegate         (3)
 *             b opens where p_1 - p_2 exceeds its spring; it lets C A_b sqrt(2 rho (p_1 - p_in)) b back      bypass       (4)
 * Symbols     P pressure ratio, P_x the largest the map has | s square of shaft speed over the largest | m_c kg/s through the
 *             compressor, what comes back through the bypass included | m_k at choke, m_s where surge allows P_x | m_e kg/s exhaust,
 *             m_o where the drawing's ratio is reached | w, b opening 0 to 1 | lambda: lean exhaust is cooler and drives less
 * Validity    0 <= s <= 1.2 (clipped); surge is a limit here, not a swing
 * Source      shape of maps: [heywood1988] 6.8; exponents, areas, springs, gains, lags: common practice, no source
 * Check       charger.test.ts
 */
import type { Charger } from "./engine-design.ts";

export type ChargerState = {
  /** square of the shaft speed over the largest */
  spin: number;
  wastegate: number;
  wastegateIntegral: number;
  bypass: number;
  ratio: number;
  /** kg/s through the compressor, followed with a short lag */
  compressorFlow: number;
};

export function newCharger(): ChargerState {
  return { spin: 0, wastegate: 1, wastegateIntegral: 0.6, bypass: 0, ratio: 1, compressorFlow: 0 };
}

export type ChargerInputs = {
  readonly wantedRatio: number;
  /** kg/s */
  readonly exhaustFlow: number;
  readonly intakeFlow: number;
  readonly lambda: number;
  /** Pa: before the compressor, behind the cooler, in the manifold */
  readonly inletPressure: number;
  readonly chargePressure: number;
  readonly manifoldPressure: number;
  /** kg/s of the drawing at full load */
  readonly largestFlow: number;
};

const SPARE_RATIO = 1.5; // (P_x - 1) over that of the largest ratio allowed
const CHOKE_SHARE = 1.4; // of the largest flow, at the largest speed
const SURGE_SHARE = 0.18;
const BYPASS_SPRING = 45e3; // Pa
const BYPASS_AREA = 3e-3; // m2 effective for each kg/s of the largest flow: about 30 mm on a 1.8 L engine
const CHARGE_DENSITY = 1.8; // kg/m3, warm and compressed
const LEAD = 0.25; // s that the control looks ahead
const LAGS = { wastegate: 0.1, bypass: 0.06, flow: 0.06, ratio: 0.04 }; // s

export function stepCharger(charger: Charger, state: ChargerState, u: ChargerInputs, dt: number): void {
  const lag = (seconds: number) => 1 - Math.exp(-dt / seconds);
  // An open bypass feeds the compressor enough to stay out of surge.
  const flow = Math.max(state.compressorFlow / u.largestFlow, SURGE_SHARE * state.bypass);
  const mapped = mapRatio(charger, state.spin, flow);
  const rate = (mapped - state.ratio) / LAGS.ratio;
  const error = clamp((state.ratio + LEAD * rate) / u.wantedRatio - 1, 0.3);
  if (Math.abs(error) < 0.1) state.wastegateIntegral = share(state.wastegateIntegral + 3 * error * dt); // far away it would wind up
  state.wastegate += (share(state.wastegateIntegral + 3 * error) - state.wastegate) * lag(LAGS.wastegate);

  const heat = Math.min(1, 0.35 + 0.9 / Math.max(u.lambda, 1));
  const drive = (Math.max(0, heat * u.exhaustFlow) / (charger.spooledAt * u.largestFlow)) ** 1.3;
  const driven = (drive / SPARE_RATIO) * (1 - 0.98 * state.wastegate);
  state.spin = Math.min(1.2, state.spin + (driven - state.spin) * lag(charger.lag));

  const open = u.chargePressure - u.manifoldPressure > BYPASS_SPRING ? 1 : 0;
  state.bypass += (open - state.bypass) * lag(LAGS.bypass);
  const back =
    BYPASS_AREA *
    u.largestFlow *
    state.bypass *
    Math.sqrt(2 * CHARGE_DENSITY * Math.max(0, u.chargePressure - u.inletPressure));
  state.compressorFlow += (Math.max(0, u.intakeFlow) + back - state.compressorFlow) * lag(LAGS.flow);
  state.ratio += (mapped - state.ratio) * lag(LAGS.ratio);
}

/** (1); `flow` as a share of the drawing's largest. */
export function mapRatio(charger: Charger, spin: number, flow: number): number {
  if (spin <= 0) return 1;
  const choked = (flow / CHOKE_SHARE) ** 6 / spin ** 3;
  const bySurge = (flow / SURGE_SHARE) ** 1.3;
  return 1 + SPARE_RATIO * (charger.largestRatio - 1) * Math.min(spin * Math.max(0, 1 - choked), bySurge);
}

function share(x: number): number {
  return Math.min(Math.max(x, 0), 1);
}

function clamp(x: number, limit: number): number {
  return Math.min(Math.max(x, -limit), limit);
}
