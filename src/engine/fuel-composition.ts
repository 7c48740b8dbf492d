/**
 * Atoms per carbon atom of a fuel from its analysis by mass.
 *
 * Equation    y = (h/1.008)/(c/12.011),  z = (o/16)/(c/12.011)                                                  (1)
 * Symbols     c, h, o mass shares of carbon, hydrogen, oxygen | y, z atoms of hydrogen and oxygen per carbon atom
 * Validity    c > 0, h, o >= 0 (asserted); sulphur, nitrogen and water are left out: they carry no air worth counting
 * Source      atomic weights as in [heywood1988] eq. (3.6)                    Check  published/air-box.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";
import type { FuelAtoms } from "./exhaust-lambda.ts";

export function atomsOfMassShares(shares: {
  readonly carbon: number;
  readonly hydrogen: number;
  readonly oxygen: number;
}): FuelAtoms {
  const { carbon, hydrogen, oxygen } = shares;
  requirePositive("carbon", carbon);
  requireWithin("hydrogen", hydrogen, 0, Number.MAX_VALUE);
  requireWithin("oxygen", oxygen, 0, Number.MAX_VALUE);
  const carbonMoles = carbon / 12.011;
  return { hydrogenPerCarbon: hydrogen / 1.008 / carbonMoles, oxygenPerCarbon: oxygen / 16 / carbonMoles };
}
