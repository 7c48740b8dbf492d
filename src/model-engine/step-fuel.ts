/** One step of the fuel, bank by bank: pulse, delivery with planted errors, purge, port wall, mixture, and its way to the probe. */
import { fuelFlowOfPulses, pulseWidthFor } from "../engine/index.ts";
import { LAMBDA_OF_AIR, stepExhaust } from "./exhaust-gas.ts";
import type { BankState, Plant } from "./plant.ts";
import { exhaustAirFlow, regulatorShare, supplyShare } from "./planted-laws.ts";
import type { BankSide, PreparedEngine } from "./prepared-engine.ts";

const WALL_SHARE = 0.1; // of the dose that reaches the port wall and is not compensated for
const WALL_TIME = 0.5; // s

export function stepFuel(e: PreparedEngine, plant: Plant, dt: number): void {
  const count = plant.banks.length;
  const dose = plant.computer.doses.reduce((sum, d) => sum + d, 0);
  const failing = pressureShare(e, plant, dose);
  const purged = plant.speed > 3 ? plant.purgeFlow * e.engine.parts.purgeRichness : 0;
  let fuel = 0;
  let pulse = 0;
  for (const [i, bank] of plant.banks.entries()) {
    const side = e.banks[i]!;
    deliver(e, plant, { bank, side, dose: plant.computer.doses[i]!, failing });
    bank.fuelFromWall += (bank.fuelDelivered - bank.fuelFromWall) * (1 - Math.exp(-dt / WALL_TIME));
    const unmetered = plant.speed > 3 ? side.fuelUnmetered + purged / count : 0;
    bank.fuelIntoCylinders = (1 - WALL_SHARE) * bank.fuelDelivered + WALL_SHARE * bank.fuelFromWall + unmetered;
    bank.lambda = lambdaOf(plant.speed, plant.dryAir / count, e.ratioTrue * bank.fuelIntoCylinders);
    fuel += bank.fuelIntoCylinders;
    pulse += bank.pulseWidth / count;
  }
  plant.fuelIntoCylinders = fuel;
  plant.pulseWidth = pulse;
  plant.lambda = lambdaOf(plant.speed, plant.dryAir, e.ratioTrue * fuel);
  plant.exhaustFlow += (plant.flows.cylinder + fuel - plant.exhaustFlow) * (1 - Math.exp(-dt / 0.08));
  for (const [i, bank] of plant.banks.entries()) toProbe(e, plant, bank, e.banks[i]!, dt);
}

/** Flow through an injector whose fuel is held against ambient: the manifold's vacuum helps. 1 where it is held against the manifold. */
function referenceShare(e: PreparedEngine, pressure: number): number {
  const { atPressure, pressureReference } = e.design.injectors;
  if (pressureReference !== "ambient") return 1;
  return Math.sqrt(Math.max(0.1, 1 + (e.ambient.pressure - pressure) / atPressure));
}

/** What a weak pump or a regulator without its hose leaves of the delivery. */
function pressureShare(e: PreparedEngine, plant: Plant, dose: number): number {
  const { faults, design } = e;
  return (
    supplyShare(faults.fuelSupply, dose, e.largestFuelFlow) *
    regulatorShare({
      riseAtIdle: faults.fuelPressureRise,
      ambientPressure: e.ambient.pressure,
      manifoldPressure: plant.air.pressure2,
      injectorPressure: design.injectors.atPressure,
    })
  );
}

function deliver(
  e: PreparedEngine,
  plant: Plant,
  to: { readonly bank: BankState; readonly side: BankSide; readonly dose: number; readonly failing: number },
): void {
  const { bank, side, dose, failing } = to;
  const { design } = e;
  const cylinders = design.cylinders / plant.banks.length;
  const cycles = (plant.speed * cylinders) / 2;
  if (dose === 0 || plant.speed * design.cylinders < 2) {
    bank.pulseWidth = 0;
    bank.fuelDelivered = 0;
    return;
  }
  const staticMassFlow = design.injectors.flow * e.fuelDensity * referenceShare(e, plant.sensors.pressure);
  const truly = design.injectors.flow * e.fuelDensity * referenceShare(e, plant.air.pressure2);
  const deadTime = deadTimeAt(design.injectors.deadTime, plant.battery);
  bank.pulseWidth = pulseWidthFor({ fuel: dose / cycles, deadTime, staticMassFlow });
  bank.fuelDelivered = fuelFlowOfPulses({
    pulseWidth: bank.pulseWidth,
    deadTime: deadTime + side.deadTimeError,
    staticMassFlow: truly * side.fuelScale * failing,
    cylinders,
    pulsesPerCycle: 1,
    engineSpeed: plant.speed,
  });
}

function lambdaOf(speed: number, air: number, needed: number): number {
  return speed < 3 || air >= LAMBDA_OF_AIR * needed ? LAMBDA_OF_AIR : Math.max(0.3, air / needed);
}

/** The probe counts oxygen: that of charges that did not burn, and that of air let in on the way. */
function toProbe(e: PreparedEngine, plant: Plant, bank: BankState, side: BankSide, dt: number): void {
  const count = plant.banks.length;
  const added = exhaustAirFlow(side.exhaustAir, plant.flows.cylinder, e.idleFlow);
  const oxygen = (1 + (added * count) / Math.max(plant.flows.cylinder, 1e-5)) / (1 - side.misfire);
  stepExhaust(
    bank.exhaust,
    {
      lambda: bank.lambda * oxygen,
      speed: plant.speed,
      massFlow: plant.exhaustFlow / count,
      volume: e.design.exhaust.volumeToProbe / count,
    },
    dt,
  );
}

/** Dead time grows as the supply falls; the computer knows this law. [common practice, no source] */
function deadTimeAt(nominal: number, voltage: number): number {
  return nominal * (14 / voltage) ** 1.5;
}
