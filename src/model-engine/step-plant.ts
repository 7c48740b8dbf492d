/** One step of the engine: air, fuel, speed, and what warms or charges slowly. */
import { stepCharger } from "./charger.ts";
import { netTorque } from "./crankshaft.ts";
import type { Demand } from "./driver.ts";
import { wantedRatio } from "./governor.ts";
import { type Plant, WARM_COOLANT } from "./plant.ts";
import type { PreparedEngine } from "./prepared-engine.ts";
import { stepAir } from "./step-air.ts";
import { stepFuel } from "./step-fuel.ts";

export function stepPlant(e: PreparedEngine, plant: Plant, demand: Demand, dt: number): void {
  stepBoost(e, plant, demand, dt);
  stepAir(e, plant, dt);
  stepFuel(e, plant, dt);
  stepSpeed(e, plant, demand, dt);
  plant.coolant += (WARM_COOLANT - plant.coolant) * (dt / 120);
  const supply = plant.speed > 6 ? 14.1 - 0.012 * demand.accessoryTorque : 12.4;
  plant.battery += (supply - plant.battery) * (1 - Math.exp(-dt / 0.5));
}

function stepBoost(e: PreparedEngine, plant: Plant, demand: Demand, dt: number): void {
  const { charger } = e.design;
  if (charger === null) return;
  const { air } = plant;
  stepCharger(
    charger,
    plant.charger,
    {
      wantedRatio: wantedRatio(e, demand.load ?? 0),
      exhaustFlow: plant.exhaustFlow,
      intakeFlow: plant.flows.suction,
      lambda: plant.lambda,
      inletPressure: e.ambient.pressure,
      chargePressure: air.pressure1,
      manifoldPressure: air.pressure2,
      largestFlow: e.largestFlow,
    },
    dt,
  );
}

/** Fuel of the charges that fire. */
function burning(e: PreparedEngine, plant: Plant): number {
  return plant.banks.reduce((sum, bank, i) => sum + bank.fuelIntoCylinders * (1 - e.banks[i]!.misfire), 0);
}

function stepSpeed(e: PreparedEngine, plant: Plant, demand: Demand, dt: number): void {
  if (demand.mode === "held") {
    plant.speed = demand.speed;
    return;
  }
  if (demand.mode === "off") {
    plant.speed = plant.speed < 0.5 ? 0 : plant.speed * Math.exp(-dt / 0.35);
    return;
  }
  const starter = plant.speed < 7 ? 90 * (1 - plant.speed / 7) : 0;
  const torque = netTorque(e.design, {
    speed: plant.speed,
    fuel: burning(e, plant),
    air: plant.dryAir,
    stoichiometricRatio: e.ratioTrue,
    pressure: plant.air.pressure2,
    exhaustPressure: plant.exhaustPressure,
    accessoryTorque: demand.accessoryTorque,
    sparkShare: e.design.ignition === "spark" ? plant.governor.sparkShare : 1,
  });
  plant.speed = Math.max(0, plant.speed + ((torque + starter) * dt) / (2 * Math.PI * e.design.inertia));
}
