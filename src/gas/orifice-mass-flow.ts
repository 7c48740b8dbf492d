/**
 * Mass flow through a restriction, signed: positive from "upstream" to "downstream", negative the other way.
 *
 * Equation    m = C A p1 Psi(p2/p1, g) / sqrt(R T1)                                                              (1)
 * Symbols     m kg/s | C discharge coefficient 1 | A m2 | p1, p2 Pa absolute | T1 K total, of the side it flows from | R J/(kg K)
 * Validity    p1 >= 0, p2 >= 0, T > 0, C A >= 0 (asserted)
 * Assumes     steady, adiabatic, no pressure recovery behind the throat, C fitted with the same R and g
 * Numerics    continuous through choking and through p1 = p2, where the slope is infinite (see smoothed-orifice-flow.ts for integrators)
 * Source      [heywood1988] App. C eqs. (C.8), (C.9)                         Check published/heywood1988.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";
import { GAMMA_AIR, GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";
import { orificeFlowFunction } from "./orifice-flow-function.ts";

export type OrificeInput = {
  readonly dischargeCoefficient: number;
  /** m2 */
  readonly area: number;
  readonly upstreamPressure: number;
  readonly upstreamTemperature: number;
  readonly downstreamPressure: number;
  /** K, used when the flow runs backwards; the upstream one where not given */
  readonly downstreamTemperature?: number;
  readonly gamma?: number;
  readonly gasConstant?: number;
};

export function orificeMassFlow(input: OrificeInput): number {
  const { upstreamPressure, downstreamPressure } = input;
  requireWithin("upstream pressure", upstreamPressure, 0, Number.MAX_VALUE);
  requireWithin("downstream pressure", downstreamPressure, 0, Number.MAX_VALUE);
  if (upstreamPressure === downstreamPressure) return 0;
  return upstreamPressure > downstreamPressure
    ? forwardFlow(input, upstreamPressure, input.upstreamTemperature, downstreamPressure)
    : -forwardFlow(
        input,
        downstreamPressure,
        input.downstreamTemperature ?? input.upstreamTemperature,
        upstreamPressure,
      );
}

function forwardFlow(input: OrificeInput, high: number, temperature: number, low: number): number {
  const { dischargeCoefficient, area, gamma = GAMMA_AIR, gasConstant = GAS_CONSTANT_DRY_AIR } = input;
  requirePositive("temperature", temperature);
  requireWithin("effective area", dischargeCoefficient * area, 0, Number.MAX_VALUE);
  return (
    (dischargeCoefficient * area * high * orificeFlowFunction(low / high, gamma)) / Math.sqrt(gasConstant * temperature)
  );
}
