/**
 * Fuel of an injector from its pulse width, and back.
 *
 * Equation    q = q_0 sqrt(dp/dp_0)                                 static volume flow                          (1)
 *             m = rho q max(0, t - d)                              fuel of one pulse                            (2)
 * Symbols     q m3/s | dp Pa across the injector: rail minus manifold | t s pulse width | d s dead time | rho kg/m3 | m kg
 * Validity    dp >= 0 (asserted); (2) is straight above about twice the dead time, below it real injectors bend (common practice)
 * Source      (1) incompressible orifice [heywood1988] section 7.3; (2) common practice, no source    Check published/injector.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";

export function injectorFlow(state: {
  /** m3/s at `referencePressureDifference` */
  readonly referenceFlow: number;
  readonly referencePressureDifference: number;
  readonly pressureDifference: number;
}): number {
  const { referenceFlow, referencePressureDifference, pressureDifference } = state;
  requirePositive("reference pressure difference", referencePressureDifference);
  requireWithin("pressure difference", pressureDifference, 0, Number.MAX_VALUE);
  return referenceFlow * Math.sqrt(pressureDifference / referencePressureDifference);
}

/**
 * Pressure across the injector. A regulator referenced to the manifold holds the difference itself; one referenced to the
 * ambient holds the rail above ambient, so that manifold vacuum adds to the difference.
 */
export function injectorPressureDifference(state: {
  readonly reference: "manifold" | "ambient";
  /** Pa, what the regulator holds above its reference */
  readonly regulatedPressure: number;
  readonly manifoldPressure: number;
  readonly ambientPressure: number;
}): number {
  const { reference, regulatedPressure, manifoldPressure, ambientPressure } = state;
  return reference === "manifold"
    ? regulatedPressure
    : Math.max(0, regulatedPressure + ambientPressure - manifoldPressure);
}

export type Pulse = {
  /** s */
  readonly pulseWidth: number;
  readonly deadTime: number;
  /** kg/s while fully open */
  readonly staticMassFlow: number;
};

/** (2), kg of one pulse. */
export function injectedFuel(pulse: Pulse): number {
  return pulse.staticMassFlow * Math.max(0, pulse.pulseWidth - pulse.deadTime);
}

/** Pulse width that delivers `fuel` kg; the inverse of (2) for fuel > 0. */
export function pulseWidthFor(state: {
  readonly fuel: number;
  readonly deadTime: number;
  readonly staticMassFlow: number;
}): number {
  requireWithin("fuel", state.fuel, 0, Number.MAX_VALUE);
  requirePositive("static mass flow", state.staticMassFlow);
  return state.fuel === 0 ? 0 : state.deadTime + state.fuel / state.staticMassFlow;
}

/** kg/s of fuel of the whole engine. `pulsesPerCycle` of each injector in two revolutions, one injector a cylinder. */
export function fuelFlowOfPulses(
  pulse: Pulse & { readonly cylinders: number; readonly pulsesPerCycle: number; readonly engineSpeed: number },
): number {
  return (injectedFuel(pulse) * pulse.cylinders * pulse.pulsesPerCycle * pulse.engineSpeed) / 2;
}

/** Share of the time the injector is commanded open. */
export function injectorDuty(state: {
  readonly pulseWidth: number;
  readonly pulsesPerCycle: number;
  readonly engineSpeed: number;
}): number {
  return (state.pulseWidth * state.pulsesPerCycle * state.engineSpeed) / 2;
}
