/**
 * Air told by the exhaust gas: lambda from its composition, times the fuel.
 *
 * Equation    m = lambda(gas) AFR m_fuel                                                                        (1)
 *             gas = ideal exhaust of lambda = m/(AFR m_fuel), complete or in water-gas balance                  (2)
 * Symbols     m kg/s dry air | lambda 1, Brettschneider | m_fuel kg/s measured by weight, volume or injectors
 * Validity    as exhaust-lambda.ts; air added in the exhaust (leak, secondary air) is counted: at idle it can be a tenth and more
 * Source      [brettschneider1979]                                           Check  published/brettschneider1979.test.ts
 */
import {
  airFromFuel,
  type ExhaustComposition,
  type ExhaustGas,
  exhaustLambda,
  type FuelAtoms,
  idealExhaust,
  WATER_GAS_CONSTANT,
} from "../../engine/index.ts";
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

/** (2), the inverse of (1): the dry gas that this air would leave, in the balance that exhaust-lambda.ts assumes. */
export function exhaustSideGas(
  massFlow: number,
  fuel: { readonly fuelAtoms: FuelAtoms; readonly fuelFlow: number; readonly stoichiometricAirFuelRatio: number },
): ExhaustComposition {
  requirePositive("fuel flow", fuel.fuelFlow);
  const lambda = massFlow / (fuel.stoichiometricAirFuelRatio * fuel.fuelFlow);
  return idealExhaust(lambda, fuel.fuelAtoms, { basis: "dry", waterGasConstant: WATER_GAS_CONSTANT });
}
