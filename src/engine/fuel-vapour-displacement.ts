/**
 * Air displaced by fuel vapour in the port at the stoichiometric ratio: moles of vapour per mole of dry air.
 *
 * Equation    eps = M_a / (M_f AFR)                                                                              (1)
 * Symbols     eps 1 | M_a, M_f kg/mol of air and fuel vapour | AFR kg/kg
 * Validity    fuel evaporated before the intake valve closes; multiply by the equivalence ratio and the share evaporated.
 *             0 with direct injection and for diesel: nothing evaporates in the port
 * Source      [heywood1988] section 6.2.1 (effect of fuel composition on volumetric efficiency)   Check published/heywood1988.test.ts
 */
import { MOLAR_MASS_DRY_AIR } from "../quantities/index.ts";
import type { FuelName } from "./engine-description.ts";
import { fuelProperties } from "./fuel-properties.ts";

export function fuelVapourDisplacement(
  fuel: FuelName | { readonly stoichiometricAirFuelRatio: number },
  injection: "port" | "direct",
): number {
  if (injection === "direct" || fuel === "diesel") return 0;
  const { molarMass, stoichiometricAirFuelRatio } = fuelProperties(fuel);
  return MOLAR_MASS_DRY_AIR / (molarMass * stoichiometricAirFuelRatio);
}
