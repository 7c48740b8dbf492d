/**
 * Air told by the fuel that was injected and the lambda that came of it.
 *
 * Equation    m = lambda AFR m_fuel,   m_fuel = pulses N/2 z rho q(dp) (t - d)                                   (1)
 * Symbols     m kg/s dry air | lambda 1 | AFR kg/kg | z cylinders | N 1/s | rho kg/m3 fuel | q m3/s static flow at dp | t, d s
 * Validity    t > d, lambda > 0 (asserted); nothing else may bring fuel (purge, drips) or take it (misfire): see the causes
 * Source      [heywood1988] eq. (3.6), section 7.3                           Check  published/injector.test.ts, published/heywood1988.test.ts
 */
import { airFromFuel, fuelFlowOfPulses, injectorFlow } from "../../engine/index.ts";
import { requirePositive } from "../../numerics/index.ts";

export type FuelSideReading = {
  readonly pulseWidth: number;
  readonly deadTime: number;
  readonly pulsesPerCycle: number;
  readonly cylinders: number;
  readonly engineSpeed: number;
  /** m3/s of one injector at `referencePressureDifference` */
  readonly referenceFlow: number;
  readonly referencePressureDifference: number;
  readonly pressureDifference: number;
  readonly fuelDensity: number;
  readonly lambda: number;
  readonly stoichiometricAirFuelRatio: number;
};

export function fuelSideAir(reading: FuelSideReading): number {
  requirePositive("lambda", reading.lambda);
  requirePositive("fuel density", reading.fuelDensity);
  requirePositive("opening beyond the dead time", reading.pulseWidth - reading.deadTime);
  const fuelFlow = fuelFlowOfPulses({ ...reading, staticMassFlow: reading.fuelDensity * injectorFlow(reading) });
  return airFromFuel({ ...reading, fuelFlow });
}

/** The pulse width that this air would need: the inverse of (1) for t. */
export function fuelSidePulseWidth(airFlow: number, reading: Omit<FuelSideReading, "pulseWidth">): number {
  const perSecond = fuelSideAir({ ...reading, pulseWidth: reading.deadTime + 1 });
  return reading.deadTime + airFlow / perSecond;
}
