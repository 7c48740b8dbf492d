/**
 * Air told by the exhaust gas: lambda from its composition, times the fuel.
 *
 * Equation    m = lambda(gas) AFR m_fuel                                                                        (1)
 * Symbols     m kg/s dry air | lambda 1, Brettschneider | m_fuel kg/s measured by weight, volume or injectors
 * Validity    as exhaust-lambda.ts; air added in the exhaust (leak, secondary air) is counted: at idle it can be a tenth and more
 * Source      [brettschneider1979]                                           Check  published/brettschneider1979.test.ts
 */
import { airFromFuel, type ExhaustGas, exhaustLambda, type FuelAtoms } from "../../engine/index.ts";
import { requirePositive } from "../../numerics/index.ts";

export function exhaustSideAir(reading: {
  readonly gas: ExhaustGas;
  readonly fuelAtoms: FuelAtoms;
  readonly fuelFlow: number;
  readonly stoichiometricAirFuelRatio: number;
}): { readonly massFlow: number; readonly lambda: number } {
  requirePositive("fuel flow", reading.fuelFlow);
  const lambda = exhaustLambda(reading.gas, reading.fuelAtoms);
  return { lambda, massFlow: airFromFuel({ ...reading, lambda }) };
}
