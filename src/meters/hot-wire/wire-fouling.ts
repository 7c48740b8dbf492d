/**
 * A fouled wire: dirt insulates, and gives the stream more surface to touch.
 *
 * Equation    1/G_f = R_f + 1/(s G),   G = A + B m^n                                                            (1)
 *             reading/truth = m'/m,  A + B m'^n = G_f                                                           (2)
 * Symbols     R_f K/W resistance of the deposit | s outer surface over that of the clean wire, s >= 1 | G W/K king-law.ts
 * Validity    R_f >= 0, s > 0, m > 0 (asserted); G_f below A reads zero
 * Assumes     the deposit is thin against the tube; the compensating resistor is clean
 * Source      thermal resistances in series [incropera2002] section 3.3. Which way the error goes at idle depends on s and R_f: common
 *             practice says high at idle, low at high flow; a pure insulator reads low throughout (tested)
 * Check       limits in hot-wire.props.test.ts
 */
import { requirePositive, requireWithin } from "../../numerics/index.ts";
import { type KingLaw, massFlowOfConductance, wireConductance } from "./king-law.ts";

export type Fouling = {
  readonly resistance: number;
  readonly surfaceRatio: number;
};

/** (1) */
export function fouledConductance(law: KingLaw, fouling: Fouling, massFlow: number): number {
  requireWithin("resistance of the deposit", fouling.resistance, 0, Number.MAX_VALUE);
  requirePositive("surface ratio", fouling.surfaceRatio);
  return 1 / (fouling.resistance + 1 / (fouling.surfaceRatio * wireConductance(law, massFlow)));
}

/** (2) */
export function fouledReadingRatio(law: KingLaw, fouling: Fouling, massFlow: number): number {
  requirePositive("mass flow", massFlow);
  return massFlowOfConductance(law, fouledConductance(law, fouling, massFlow)).massFlow / massFlow;
}

/** The flow that a fouled wire's reading really stands for: the inverse of (2) for a reading; null where no flow gives it. */
export function cleanedFlow(law: KingLaw, fouling: Fouling, reading: number): number | null {
  requireWithin("reading", reading, 0, Number.MAX_VALUE);
  const rest = 1 / wireConductance(law, reading) - fouling.resistance;
  if (rest <= 0) return null;
  const { massFlow, inside } = massFlowOfConductance(law, 1 / (fouling.surfaceRatio * rest));
  return inside ? massFlow : null;
}
