/**
 * Fuel known from the injectors themselves: opening time recorded, flow stated. It makes a witness of the air without the engine
 * computer's own.
 *
 * Equation    dp = regulated pressure                    (regulator on the manifold)
 *             dp = regulated pressure + p_a - p          (on ambient);  half way between where it is not stated
 *             ln(AFR m_fuel), m_fuel of fuelSideAir at lambda 1
 * Symbols     dp Pa across the injector | p, p_a manifold and ambient | AFR of the fuel, of its blend where the alcohol is recorded
 * Validity    port injection at the pressure for which the flow is stated; direct injection only with the rail pressure recorded
 * Assumes     one pulse a cycle where not stated; battery voltage as usual: its effect on the dead time is in deadTimeStated
 * Source      meters/fuel-side
 */
import type { OperatingPoint } from "../channels/index.ts";
import {
  blendProperties,
  type EngineDescription,
  type FuelProperties,
  fuelProperties,
  injectorPressureDifference,
} from "../engine/index.ts";
import { fuelSideAir } from "../meters/index.ts";
import { ASSUMED_DEAD_TIME } from "./point-physics.ts";
import { find } from "./readings.ts";
import type { PointState } from "./tally-model.ts";

export type PulseFuel = {
  /** ln of the air in kg/s that this fuel burns at lambda 1 */
  readonly logAir: number;
  /** variance of the readings */
  readonly variance: number;
};

export function pulseFuel(
  engine: EngineDescription,
  point: OperatingPoint,
  i: number,
  physics: PointState,
  bank: 1 | 2 | null,
): PulseFuel | null {
  const { injectors } = engine;
  const pulse = find(point, "pulseWidth", bank);
  if (injectors === null || injectors.flow === null || injectors.atPressure === null || pulse === null) return null;
  const deadTime = injectors.deadTime ?? ASSUMED_DEAD_TIME;
  const open = pulse.mean - deadTime;
  const difference = pressureAcross(engine, point, i, physics);
  if (!(open > 0.1 * deadTime) || difference === null) return null;
  const speed = find(point, "engineSpeed", null)!;
  const fuel = fuelOf(engine, point);
  const air = fuelSideAir({
    pulseWidth: pulse.mean,
    deadTime,
    pulsesPerCycle: injectors.pulsesPerCycle ?? 1,
    cylinders: engine.cylinders,
    engineSpeed: speed.mean,
    referenceFlow: injectors.flow,
    referencePressureDifference: injectors.atPressure,
    pressureDifference: difference,
    fuelDensity: fuel.density,
    lambda: 1,
    stoichiometricAirFuelRatio: fuel.stoichiometricAirFuelRatio,
  });
  return { logAir: Math.log(air), variance: pulse.variance / open ** 2 + speed.variance / speed.mean ** 2 };
}

/** The fuel as stated; where its alcohol is recorded and it is a petrol, that blend. */
function fuelOf(engine: EngineDescription, point: OperatingPoint): FuelProperties {
  const alcohol = find(point, "alcoholShare", null)?.mean;
  const blends = engine.fuel === "petrol" || engine.fuel === "e10" || engine.fuel === "e85";
  if (alcohol === undefined || !blends) return fuelProperties(engine.fuel);
  const ethanol = Math.min(1, Math.max(0, alcohol));
  return blendProperties({ petrol: 1 - ethanol, ethanol });
}

function pressureAcross(
  engine: EngineDescription,
  point: OperatingPoint,
  i: number,
  physics: PointState,
): number | null {
  const { atPressure, pressureReference } = engine.injectors!;
  if (engine.injection === "direct") {
    const rail = find(point, "fuelPressure", null);
    return rail !== null && rail.mean > 0 ? rail.mean : null;
  }
  const across = (reference: "manifold" | "ambient") =>
    injectorPressureDifference({
      reference,
      regulatedPressure: atPressure!,
      manifoldPressure: physics.pressure[i]!,
      ambientPressure: physics.barometer[i]!,
    });
  if (pressureReference !== null) return across(pressureReference);
  return Math.sqrt(across("manifold") * across("ambient"));
}

/** ln of the flow that the other reference of the regulator would make, less that taken: known where the reference is stated. */
export function referenceDoubt(engine: EngineDescription, i: number, physics: PointState): number {
  const { injectors } = engine;
  if (injectors === null || injectors.atPressure === null || injectors.pressureReference !== null) return 0;
  return 0.25 * Math.log1p(Math.max(0, physics.barometer[i]! - physics.pressure[i]!) / injectors.atPressure);
}
