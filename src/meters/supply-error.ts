/**
 * What a wrong supply or ground does to a meter whose signal is a voltage read against a fixed reference.
 *
 * Equation    s' = s q + g                                                                                        (1)
 *             reading/truth = m(s')/m(s)                                                                        (2)
 * Symbols     s V signal with nominal supply | q supply over its nominal value, as far as the signal follows it | g V ground shift of the
 *             meter against the computer
 * Validity    voltage signals; a ratio, frequency or period does not feel it (1 is returned)
 * Assumes     the signal follows the supply fully (q) or not at all (q = 1): makers differ, common practice, no source
 * Source      definition                                                     Check  describe-curve.test.ts
 */
import type { MoistAir } from "../gas/index.ts";
import { requirePositive } from "../numerics/index.ts";
import { meterFlow } from "./meter-flow.ts";
import type { PreparedMeter } from "./prepare-meter.ts";

export function supplyErrorRatio(
  meter: PreparedMeter,
  signal: number,
  air: MoistAir,
  fault: { readonly supplyRatio?: number; readonly groundShift?: number },
): number {
  if (meter.signalUnit !== "V") return 1;
  const { supplyRatio = 1, groundShift = 0 } = fault;
  const truth = meterFlow(meter, signal, air).massFlow;
  requirePositive("flow at this signal", truth);
  return meterFlow(meter, signal * supplyRatio + groundShift, air).massFlow / truth;
}
