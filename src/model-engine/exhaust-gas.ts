/**
 * From the mixture in the cylinders to what the probe reads: transport delay, mixing on the way, lag of the probe.
 *
 * Equation    delay = 1.5 cycles + V rho/m,  d(y)/dt = (x(t - delay) - y)/tau
 * Symbols     V m3 between valves and probe | m kg/s exhaust | rho kg/m3 of hot exhaust gas | tau s mixing and probe
 * Validity    delays up to the length of the line; lambda is cut at 8 (air)
 * Source      first-order lag plus delay: common practice, no source; 900 K exhaust gas
 */
import { GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";

export const LAMBDA_OF_AIR = 8;
const LINE = 512;
const HOT_DENSITY = 105e3 / (GAS_CONSTANT_DRY_AIR * 900);
const LAG = 0.12;

export type ExhaustState = { readonly line: Float64Array; head: number; atProbe: number };

export function newExhaust(): ExhaustState {
  return { line: new Float64Array(LINE).fill(LAMBDA_OF_AIR), head: 0, atProbe: LAMBDA_OF_AIR };
}

export type ExhaustInputs = {
  readonly lambda: number;
  readonly speed: number;
  readonly massFlow: number;
  readonly volume: number;
};

/** Lambda at the probe, lagged; mixing is linear in 1/lambda (fuel to air). */
export function stepExhaust(state: ExhaustState, u: ExhaustInputs, dt: number): void {
  state.head = (state.head + 1) % LINE;
  state.line[state.head] = Math.min(u.lambda, LAMBDA_OF_AIR);
  if (u.speed < 1 || u.massFlow < 1e-5) return;
  const delay = 3 / u.speed + (u.volume * HOT_DENSITY) / u.massFlow;
  const steps = Math.min(LINE - 1, Math.round(delay / dt));
  const arriving = state.line[(state.head - steps + LINE) % LINE]!;
  const mixed = 1 / state.atProbe + (1 / arriving - 1 / state.atProbe) * (1 - Math.exp(-dt / LAG));
  state.atProbe = 1 / mixed;
}

/** V of a narrow probe: rich about 0.85, lean about 0.07, steep at 1 [common practice, no source]. */
export function narrowProbeVoltage(lambdaRead: number): number {
  return 0.46 - 0.39 * Math.tanh(45 * (lambdaRead - 1));
}
