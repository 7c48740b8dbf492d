/**
 * How planted faults grow and fade with what the engine does, where the catalogue gives a size at one place only.
 *
 * Equation    timing        eta -> eta (1 - t L (1 - N/N_x)),  N_x = 0.65 N_max                                    (1)
 *             supply        delivered share = 1 - l max(0, (f - f_0)/(f_max - f_0))                              (2)
 *             regulator     delivered share = sqrt(1 + (d/q)(p_a - p)/(p_a - p_idle)),  p_idle = 31 kPa            (3)
 *             exhaust air   X = X_idle/max(m/m_idle, 1/2), so that X/m falls with the square of the flow           (4)
 *             pulsation     reading share = 1 + w exp(-((N - N_p)/b)^2) ramp(p/p_1; 0.75, 0.95)                    (5)
 *             wrong curve   reading share = 1 + e(m), e straight between 30 and 70 % of the largest flow, held at
 *                           its values at 10 % and 100 %                                                        (6)
 * Symbols     t crank degrees late, L = 0.006 a degree | f kg/s fuel, l loss | d Pa too high at idle, q Pa across the injectors |
 *             w error at its worst, N_p 25 1/s, b 9 1/s, p_1 before the throttle
 * Validity    t within 30 degrees, l < 1, all shares above zero (asserted where they could leave it)
 * Source      (2), (6) definitions of the sizes; (3) flow grows with the root of the pressure; (1), (4), (5) shapes and constants
 *             common practice, no source. (5), and the gain of (1) at high speed, stand for what resolved pipes would compute: the
 *             crank-angle engine without waves confirms the loss of (1) at idle and low speed only
 * Check       planted-laws.test.ts, signatures of each fault in signatures*.test.ts
 */
import { assert } from "../quantities/index.ts";

const LOSS_PER_DEGREE = 0.006;

export function timingShare(late: number, speed: number, largestSpeed: number): number {
  assert(Math.abs(late) <= 30, `valve timing within 30 degrees, got ${late}`);
  return 1 - late * LOSS_PER_DEGREE * (1 - speed / (0.65 * largestSpeed));
}

export function supplyShare(
  supply: { readonly onset: number; readonly loss: number } | null,
  fuelFlow: number,
  largestFuelFlow: number,
): number {
  if (supply === null || fuelFlow <= supply.onset) return 1;
  assert(supply.loss < 1 && largestFuelFlow > supply.onset, `a supply that fails below ${largestFuelFlow} kg/s`);
  return Math.max(0.1, 1 - (supply.loss * (fuelFlow - supply.onset)) / (largestFuelFlow - supply.onset));
}

export function regulatorShare(at: {
  readonly riseAtIdle: number;
  readonly ambientPressure: number;
  readonly manifoldPressure: number;
  readonly injectorPressure: number;
}): number {
  const vacuum = (at.ambientPressure - at.manifoldPressure) / (at.ambientPressure - 31e3);
  return Math.sqrt(Math.max(0, 1 + (at.riseAtIdle * vacuum) / at.injectorPressure));
}

export function exhaustAirFlow(atIdle: number, airFlow: number, idleFlow: number): number {
  return atIdle / Math.max(airFlow / idleFlow, 0.5);
}

export function pulsationShare(worst: number, speed: number, throttlePressureRatio: number): number {
  if (worst === 0) return 1;
  const load = Math.min(1, Math.max(0, (throttlePressureRatio - 0.75) / 0.2));
  return 1 + worst * Math.exp(-(((speed - 25) / 9) ** 2)) * load;
}

export function wrongCurveShare(
  error: { readonly at30: number; readonly at70: number },
  shareOfLargest: number,
): number {
  const held = Math.min(1, Math.max(0.1, shareOfLargest));
  return 1 + error.at30 + ((error.at70 - error.at30) * (held - 0.3)) / 0.4;
}
