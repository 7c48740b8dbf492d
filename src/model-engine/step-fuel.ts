/** One step of the fuel: pulse, delivery with planted errors, purge, port wall, mixture, and its way to the probe. */
import { fuelFlowOfPulses, pulseWidthFor } from "../engine/index.ts";
import { LAMBDA_OF_AIR, stepExhaust } from "./exhaust-gas.ts";
import type { Plant } from "./plant.ts";
import { exhaustAirFlow, regulatorShare, supplyShare } from "./planted-laws.ts";
import type { PreparedEngine } from "./prepared-engine.ts";

const WALL_SHARE = 0.1; // of the dose that reaches the port wall and is not compensated for
const WALL_TIME = 0.5; // s

export function stepFuel(e: PreparedEngine, plant: Plant, dt: number): void {
  const { computer, speed } = plant;
  const { design, faults } = e;
  const { parts } = e.engine;
  const scale = Math.exp(parts.injectorScale) * faults.fuelScale;
  const cycles = (speed * design.cylinders) / 2;
  if (computer.fuelCommanded === 0 || cycles < 1) {
    plant.pulseWidth = 0;
    plant.fuelDelivered = 0;
  } else {
    const staticMassFlow = design.injectors.flow * e.fuelDensity;
    const deadTime = deadTimeAt(design.injectors.deadTime, plant.battery);
    plant.pulseWidth = pulseWidthFor({ fuel: computer.fuelCommanded / cycles, deadTime, staticMassFlow });
    const failing =
      supplyShare(faults.fuelSupply, computer.fuelCommanded, e.largestFuelFlow) *
      regulatorShare({
        riseAtIdle: faults.fuelPressureRise,
        ambientPressure: e.ambient.pressure,
        manifoldPressure: plant.air.pressure2,
        injectorPressure: design.injectors.atPressure,
      });
    plant.fuelDelivered = fuelFlowOfPulses({
      pulseWidth: plant.pulseWidth,
      deadTime: deadTime + parts.injectorDeadTime + faults.deadTimeError,
      staticMassFlow: staticMassFlow * scale * failing,
      cylinders: design.cylinders,
      pulsesPerCycle: 1,
      engineSpeed: speed,
    });
  }
  const unmetered = speed > 3 ? faults.fuelUnmetered + plant.purgeFlow * parts.purgeRichness : 0;
  plant.fuelFromWall += (plant.fuelDelivered - plant.fuelFromWall) * (1 - Math.exp(-dt / WALL_TIME));
  plant.fuelIntoCylinders = (1 - WALL_SHARE) * plant.fuelDelivered + WALL_SHARE * plant.fuelFromWall + unmetered;
  const needed = e.ratioTrue * plant.fuelIntoCylinders;
  const noMixture = speed < 3 || plant.dryAir >= LAMBDA_OF_AIR * needed;
  plant.lambda = noMixture ? LAMBDA_OF_AIR : Math.max(0.3, plant.dryAir / needed);
  plant.exhaustFlow +=
    (plant.flows.cylinder + plant.fuelIntoCylinders - plant.exhaustFlow) * (1 - Math.exp(-dt / 0.08));
  // The probe counts oxygen: that of charges that did not burn, and that of air let in on the way.
  const addedAir = exhaustAirFlow(faults.exhaustAir, plant.flows.cylinder, e.idleFlow);
  const oxygen = (1 + addedAir / Math.max(plant.flows.cylinder, 1e-5)) / (1 - faults.misfire);
  stepExhaust(
    plant.exhaust,
    { lambda: plant.lambda * oxygen, speed, massFlow: plant.exhaustFlow, volume: design.exhaust.volumeToProbe },
    dt,
  );
}

/** Dead time grows as the supply falls; the computer knows this law. [common practice, no source] */
function deadTimeAt(nominal: number, voltage: number): number {
  return nominal * (14 / voltage) ** 1.5;
}
