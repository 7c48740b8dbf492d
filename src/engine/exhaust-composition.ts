/**
 * Composition of ideal exhaust gas from lambda: complete combustion when lean, water-gas balance when rich.
 *
 * Equation    CHyOz + lambda a (O2 + 3.773 N2),  a = 1 + y/4 - z/2
 *             lambda >= 1:  CO2 = 1, H2O = y/2, O2 = (lambda - 1) a                                               (1)
 *             lambda < 1:   CO + CO2 = 1, H2 + H2O = y/2, K = (H2O CO)/(CO2 H2), oxygen balance                     (2)
 * Symbols     moles per carbon atom; returned as mole fractions, wet or dry
 * Validity    0.5 <= lambda <= 10 (asserted): below no solution without soot or fuel
 * Source      [heywood1988] section 4.9.2, eqs. (4.60) to (4.64); K = 3.7 in [mit261], 3.5 in [brettschneider1979]
 * Check       published/mit261.test.ts
 */
import { requireWithin } from "../numerics/index.ts";
import type { FuelAtoms } from "./exhaust-lambda.ts";

const NITROGEN_PER_OXYGEN = 3.773;

export type ExhaustComposition = {
  readonly carbonDioxide: number;
  readonly carbonMonoxide: number;
  readonly hydrogen: number;
  readonly water: number;
  readonly oxygen: number;
  readonly nitrogen: number;
};

export function idealExhaust(
  lambda: number,
  fuel: FuelAtoms,
  options: { readonly basis: "wet" | "dry"; readonly waterGasConstant?: number },
): ExhaustComposition {
  requireWithin("lambda", lambda, 0.5, 10);
  const { hydrogenPerCarbon: y, oxygenPerCarbon: z } = fuel;
  const oxygenNeeded = 1 + y / 4 - z / 2;
  const nitrogen = lambda * oxygenNeeded * NITROGEN_PER_OXYGEN;
  const missing = Math.max(0, 2 * (1 - lambda) * oxygenNeeded);
  const carbonMonoxide = missing === 0 ? 0 : richCarbonMonoxide(missing, y, options.waterGasConstant ?? 3.7);
  const hydrogen = missing - carbonMonoxide;
  const moles = {
    carbonDioxide: 1 - carbonMonoxide,
    carbonMonoxide,
    hydrogen,
    water: y / 2 - hydrogen,
    oxygen: Math.max(0, (lambda - 1) * oxygenNeeded),
    nitrogen,
  };
  if (options.basis === "dry") moles.water = 0;
  const total = Object.values(moles).reduce((sum, part) => sum + part, 0);
  return {
    carbonDioxide: moles.carbonDioxide / total,
    carbonMonoxide: moles.carbonMonoxide / total,
    hydrogen: moles.hydrogen / total,
    water: moles.water / total,
    oxygen: moles.oxygen / total,
    nitrogen: moles.nitrogen / total,
  };
}

/**
 * CO of (2): with d atoms of oxygen missing, CO = c, H2 = d - c, H2O = y/2 - d + c, CO2 = 1 - c, so that
 * (K - 1) c^2 - (K (1 + d) + y/2 - d) c + K d = 0.
 */
function richCarbonMonoxide(missing: number, hydrogenPerCarbon: number, k: number): number {
  const a = k - 1;
  const b = k * (1 + missing) + hydrogenPerCarbon / 2 - missing;
  // the smaller root, written so that it does not cancel
  return (2 * k * missing) / (b + Math.sqrt(b * b - 4 * a * k * missing));
}
