/** The state of the engine between two steps: physical, engine computer, governor, sensors. */
import type { AirFlows, AirInputs, AirState } from "./air-path.ts";
import { type ChargerState, newCharger } from "./charger.ts";
import type { CrankEngine, Moved } from "./crank-engine.ts";
import { type ComputerState, newComputer, type Sensors } from "./engine-computer.ts";
import { type ExhaustState, LAMBDA_OF_AIR, newExhaust } from "./exhaust-gas.ts";
import { type GovernorState, newGovernor } from "./governor.ts";
import { EGR_TEMPERATURE, type PreparedEngine } from "./prepared-engine.ts";

export type Plant = {
  speed: number;
  readonly air: AirState;
  readonly inputs: AirInputs;
  readonly flows: AirFlows;
  readonly charger: ChargerState;
  /** null: cycle-averaged */
  crank: CrankAir | null;
  readonly computer: ComputerState;
  readonly governor: GovernorState;
  readonly banks: readonly BankState[];
  readonly sensors: Sensors;
  /** kg/s, total through the exhaust, smoothed over about a cycle */
  exhaustFlow: number;
  exhaustPressure: number;
  /** Pa before the turbine; of ambient without one */
  turbinePressure: number;
  /** kg/s of dry fresh air, and recirculated gas as air, into the cylinders */
  dryAir: number;
  recirculated: number;
  /** s commanded, mean of the banks; kg/s that reach the cylinders */
  pulseWidth: number;
  fuelIntoCylinders: number;
  lambda: number;
  /** kg/s */
  meterFlow: number;
  storage: number;
  purgeFlow: number;
  /** V, ratio or Hz as the meter has it, and its rate */
  meterSignal: number;
  meterSignalRate: number;
  coolant: number;
  intakeTemperature: number;
  battery: number;
};

export type BankState = {
  readonly exhaust: ExhaustState;
  /** s, kg/s: commanded pulse, delivered fuel, the part that goes by the port wall, fuel that reaches the cylinders */
  pulseWidth: number;
  fuelDelivered: number;
  fuelFromWall: number;
  fuelIntoCylinders: number;
  lambda: number;
};

function newBank(): BankState {
  return {
    exhaust: newExhaust(),
    pulseWidth: 0,
    fuelDelivered: 0,
    fuelFromWall: 0,
    fuelIntoCylinders: 0,
    lambda: LAMBDA_OF_AIR,
  };
}

/** The air by crank angle, where it is. */
export type CrankAir = {
  readonly engine: CrankEngine;
  readonly moved: Moved;
  /** of the cycle that runs: s, and kg of fuel vapour */
  readonly cycle: { time: number; vapour: number };
};

export const WARM_COOLANT = 363; // K

export function newPlant(e: PreparedEngine): Plant {
  const { pressure, temperature } = e.ambient;
  return {
    speed: 0,
    air: {
      pressure1: pressure,
      pressure2: pressure,
      temperature1: temperature + 8,
      temperature2: temperature + 20,
      recirculated: 0,
      ductFlow: 0,
    },
    charger: newCharger(),
    crank: null,
    inputs: {
      compressorRatio: 1,
      inletTemperature: temperature,
      throttleArea: 0,
      leakArea: 0,
      boostLeakArea: 0,
      egrArea: 0,
      exhaustPressure: pressure,
      egrTemperature: EGR_TEMPERATURE,
      draw: 0,
      residual: e.breathing.residual,
      wallTemperature: WARM_COOLANT,
      wallConductance: 0,
    },
    flows: { suction: 0, throttle: 0, leak: 0, boostLeak: 0, egr: 0, cylinder: 0, wallHeat: 0 },
    computer: newComputer(e.banks.length),
    governor: newGovernor(e),
    banks: e.banks.map(newBank),
    sensors: {
      speed: 0,
      meterReading: 0,
      pressure,
      barometer: pressure + e.engine.parts.barometerBias,
      intakeTemperature: temperature,
      coolant: WARM_COOLANT,
      lambdas: e.banks.map(() => LAMBDA_OF_AIR),
    },
    exhaustFlow: 0,
    exhaustPressure: pressure,
    turbinePressure: pressure,
    dryAir: 0,
    recirculated: 0,
    pulseWidth: 0,
    fuelIntoCylinders: 0,
    lambda: LAMBDA_OF_AIR,
    meterFlow: 0,
    storage: 0,
    purgeFlow: 0,
    meterSignal: e.meter?.atRest ?? 0,
    meterSignalRate: 0,
    coolant: WARM_COOLANT,
    intakeTemperature: temperature,
    battery: 12.4,
  };
}
