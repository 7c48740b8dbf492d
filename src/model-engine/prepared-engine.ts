/** Everything the time loop needs of one engine in one ambient with its planted faults, worked out once. */
import { fuelProperties, fuelVapourDisplacement, speedDensityFlow } from "../engine/index.ts";
import { idealMoistAirDensity } from "../gas/index.ts";
import { AIR_WATER_MOLAR_RATIO, GAS_CONSTANT_DRY_AIR, STANDARD_ATMOSPHERE } from "../quantities/index.ts";
import type { AirConstants } from "./air-path.ts";
import { type BankSide, bankSides } from "./bank-side.ts";
import { type Breathing, breathingOf } from "./breathing.ts";
import type { EngineDesign } from "./engine-design.ts";
import { type Fault, type FaultState, faultState } from "./fault.ts";
import { type MeterResponse, meterResponse } from "./meter-response.ts";
import type { Ambient, ModelEngine } from "./model-engine.ts";

/** Sharp-edged hole: the discharge coefficient that the sizes of leaks are told with. */
export const HOLE_DISCHARGE = 0.65;
/** K of the recirculated gas where it enters, cooled [common practice, no source] */
export const EGR_TEMPERATURE = 400;
/** m2 effective of the purge valve fully open [common practice, no source] */
export const PURGE_AREA = 0.4e-6;

export type { BankSide };

export type PreparedEngine = {
  readonly engine: ModelEngine;
  readonly design: EngineDesign;
  readonly ambient: Ambient;
  readonly faults: FaultState;
  readonly air: AirConstants;
  readonly breathing: Breathing;
  /** one or two */
  readonly banks: readonly BankSide[];
  readonly meter: MeterResponse | null;
  /** share of the suction flow that enters behind the meter and before the throttle */
  readonly unmeteredShare: number;
  /** kg/s of dry air at full load and the speed where it is greatest, in standard air, as drawn */
  readonly largestFlow: number;
  readonly idleFlow: number;
  /** kg/s of fuel at full load there, as dosed */
  readonly largestFuelFlow: number;
  /** Pa s2/kg2 of the exhaust without a turbine */
  readonly exhaustResistance: number;
  /** eps of the fuel, and stoichiometric ratios: assumed by the computer, true */
  readonly vapourDisplacement: number;
  readonly ratioAssumed: number;
  readonly ratioTrue: number;
  readonly fuelDensity: number;
};

export function prepareEngine(engine: ModelEngine, ambient: Ambient, planted: readonly Fault[]): PreparedEngine {
  const { design, parts } = engine;
  const faults = faultState(planted);
  const largestFlow = largestFlowOf(design);
  const idleFlow = idleFlowOf(design);
  const density = idealMoistAirDensity({
    pressure: ambient.pressure,
    temperature: ambient.temperature,
    humidityRatio: ambient.humidityRatio,
  });
  // k of filter and cooler as in [kPa lost at the largest flow] in air of 1.2 kg/m3; a leak beside the filter lowers it.
  const filter = ((design.intake.filterDrop + faults.intakeRestriction) * 1.2) / largestFlow ** 2;
  const cooler = (design.intake.coolerDrop * 1.2) / largestFlow ** 2;
  const leakRatio = HOLE_DISCHARGE * faults.leakBeforeThrottleArea * Math.sqrt(2 * filter);
  const fuel = fuelProperties(design.fuel);
  const { humidityRatio } = ambient;
  return {
    engine,
    design,
    ambient,
    faults,
    air: {
      volume1: design.intake.chargeVolume,
      volume2: design.intake.manifoldVolume,
      gasConstant: (GAS_CONSTANT_DRY_AIR * (1 + AIR_WATER_MOLAR_RATIO * humidityRatio)) / (1 + humidityRatio),
      ambientPressure: ambient.pressure,
      ambientTemperature: ambient.temperature,
      filterResistance: filter / density / (1 + leakRatio) ** 2,
      coolerResistance: cooler / density,
      ductInertia: ductInertia(design.intake.throttleBore),
    },
    breathing: breathingOf(design, parts),
    banks: bankSides(parts, planted, design.banks ?? 1),
    meter:
      design.meter === null
        ? null
        : meterResponse(design.meter, parts, faults, { idle: idleFlow, largest: largestFlow }),
    unmeteredShare: leakRatio / (1 + leakRatio),
    largestFlow,
    idleFlow,
    exhaustResistance: design.exhaust.pressureRise / largestFlow ** 2,
    vapourDisplacement: fuelVapourDisplacement(design.fuel, design.injection),
    ratioAssumed: fuel.stoichiometricAirFuelRatio,
    ratioTrue: fuel.stoichiometricAirFuelRatio * Math.exp(parts.fuelRatio) * faults.fuelRatio,
    largestFuelFlow: largestFlow / (fuel.stoichiometricAirFuelRatio * design.computer.fullLoadLambda),
    fuelDensity: fuel.density,
  };
}

/** L/A of the duct: 0.6 m of a bore a little wider than the throttle's. [common practice, no source] */
export function ductInertia(throttleBore: number): number {
  return 0.6 / ((Math.PI / 4) * (1.08 * throttleBore) ** 2);
}

function largestFlowOf(design: EngineDesign): number {
  const boost = design.charger?.largestRatio ?? 1;
  const flows = design.breathing
    .filter(([speed]) => speed <= design.largestSpeed)
    .map(([speed, efficiency]) =>
      speedDensityFlow({
        volumetricEfficiency: efficiency,
        manifoldPressure: STANDARD_ATMOSPHERE * 0.97 * boost,
        displacement: design.displacement,
        engineSpeed: speed,
        chargeTemperature: 315,
      }),
    );
  return Math.max(...flows);
}

/** Warm idle without loads: about 30 kPa in a throttled engine, the full manifold in a diesel. */
function idleFlowOf(design: EngineDesign): number {
  const throttled = design.ignition === "spark";
  return speedDensityFlow({
    volumetricEfficiency: throttled ? 0.68 : design.breathing[0]![1],
    manifoldPressure: throttled ? 31e3 : STANDARD_ATMOSPHERE,
    displacement: design.displacement,
    engineSpeed: design.idleSpeed,
    chargeTemperature: 320,
  });
}
