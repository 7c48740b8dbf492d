/**
 * The air of the plant by crank angle: the same faults, meter and engine computer as with the cycle-averaged air path, but cylinders,
 * duct and exhaust stepped by crank-engine.ts within the plant's step, so that the meter hears what the duct does.
 *
 * Equation    air into the cylinders = fresh gas drawn over the last whole cycle, over its time                             (1)
 *             exhaust restriction of size b: k of its orifice more by p |b|/(residual share)/m_max^2                   (2)
 * Symbols     as in breathing.ts; (2) is the back pressure at which the residual-gas law gives the size
 * Assumes     gas constant of dry air for moist air (0.8 % at 0.013 kg/kg); what a drawing's parts change of its breathing
 *             (engine-parts.ts, breathing*) is not applied: valves and ports decide
 * Source      crank-engine.ts; (2) [heywood1988] eq. (6.2) as in breathing.ts                      Check crank-plant.test.ts
 */
import { crankBreathing } from "./crank-breathing.ts";
import { CYLINDER_WALL, exhaustArea, LONGEST_STEP } from "./crank-cycle.ts";
import { type CrankEngine, type CrankSettings, heatPerAir, newCrankEngine, stepCrank } from "./crank-engine.ts";
import type { EngineDesign } from "./engine-design.ts";
import { pressureOf, temperatureOf } from "./gas-volume.ts";
import type { CrankAir, Plant } from "./plant.ts";
import type { PreparedEngine } from "./prepared-engine.ts";
import { followMeter } from "./read-sensors.ts";

/** The drawing with the efficiency that its cylinders have by crank angle, so that the engine computer knows them. */
export function drawnByCrank(design: EngineDesign): EngineDesign {
  const speeds = [600, 1000, 1500, 2500, 3500, 4500, 5500, 6500].map((rpm) => rpm / 60);
  return { ...design, breathing: crankBreathing(design, speeds) };
}

export function newCrankAir(e: PreparedEngine): CrankAir {
  const reduced = (e.ambient.pressure * -e.faults.breathingChange) / e.breathing.residual / e.largestFlow ** 2;
  return {
    engine: newCrankEngine(
      e.design,
      e.ambient,
      {
        filter: e.air.filterResistance,
        cooler: e.air.coolerResistance,
        ductInertia: e.air.ductInertia,
        exhaustArea: exhaustArea(e.exhaustResistance + Math.max(0, reduced), e.ambient.pressure),
      },
      e.ambient.pressure,
    ),
    moved: { suction: 0, throttle: 0, leak: 0, boostLeak: 0, egr: 0 },
    cycle: { time: 0, vapour: 0 },
  };
}

const FIRING_LIMIT = 1.8; // lambda of a spark engine

/** One step of the plant; its inputs have been set. */
export function stepCrankAir(e: PreparedEngine, plant: Plant, crank: CrankAir, dt: number): void {
  const { engine, moved } = crank;
  const settings = settingsOf(e, plant);
  const steps = Math.ceil(dt / Math.min(LONGEST_STEP, 1 / (360 * Math.max(plant.speed, 1))));
  const mean = { pressure1: 0, pressure2: 0, temperature1: 0, temperature2: 0, exhaust: 0 };
  const before = engine.before.mass + engine.manifold.mass;
  const cylindersBefore = drawnSoFar(engine);
  moved.suction = 0;
  moved.throttle = 0;
  moved.leak = 0;
  moved.boostLeak = 0;
  moved.egr = 0;
  for (let i = 0; i < steps; i++) {
    stepCrank(engine, settings, dt / steps, moved);
    mean.pressure1 += pressureOf(engine.before) / steps;
    mean.pressure2 += pressureOf(engine.manifold) / steps;
    mean.temperature1 += temperatureOf(engine.before) / steps;
    mean.temperature2 += temperatureOf(engine.manifold) / steps;
    mean.exhaust += pressureOf(engine.exhaust) / steps;
    followMeter(e, plant, engine.duct.flow * (1 - e.unmeteredShare), dt / steps);
  }
  const { air, flows } = plant;
  air.pressure1 = mean.pressure1;
  air.pressure2 = mean.pressure2;
  air.temperature1 = mean.temperature1;
  air.temperature2 = mean.temperature2;
  air.ductFlow = moved.suction / dt;
  air.recirculated = engine.manifold.burnt / engine.manifold.mass;
  plant.exhaustPressure = mean.exhaust;
  flows.suction = moved.suction / dt;
  flows.throttle = moved.throttle / dt;
  flows.leak = moved.leak / dt;
  flows.boostLeak = moved.boostLeak / dt;
  flows.egr = moved.egr / dt;
  flows.wallHeat = settings.manifoldWall.conductance * (settings.manifoldWall.temperature - air.temperature2);
  flows.cylinder = (drawnSoFar(engine) - cylindersBefore) / dt - settings.vapour;
  plant.storage = (engine.before.mass + engine.manifold.mass - before) / dt;
  endCycle(e, plant, crank, settings, dt);
}

function settingsOf(e: PreparedEngine, plant: Plant): CrankSettings {
  const { inputs } = plant;
  const fires = plant.fuelIntoCylinders > 0 && (e.design.ignition === "compression" || plant.lambda < FIRING_LIMIT);
  return {
    speed: plant.speed,
    heatPerAir: fires ? heatPerAir(e.design, plant.lambda) : 0,
    intakeLate: e.faults.valveTimingLate,
    wallTemperature: CYLINDER_WALL,
    throttleArea: inputs.throttleArea,
    leakArea: inputs.leakArea,
    boostLeakArea: inputs.boostLeakArea,
    egrArea: inputs.egrArea,
    egrTemperature: inputs.egrTemperature,
    compressorRatio: inputs.compressorRatio,
    inletTemperature: inputs.inletTemperature,
    backPressure: plant.turbinePressure,
    vapour: e.vapourDisplacement * Math.min(1.5, 1 / plant.lambda) * plant.dryAir,
    manifoldWall: { temperature: inputs.wallTemperature, conductance: inputs.wallConductance },
  };
}

function drawnSoFar(engine: CrankEngine): number {
  return engine.cylinders.reduce((sum, cylinder) => sum + cylinder.drawn, 0);
}

/** (1): fuel is dosed to whole charges. At rest there are none. */
function endCycle(e: PreparedEngine, plant: Plant, crank: CrankAir, settings: CrankSettings, dt: number): void {
  const { cycle, engine } = crank;
  cycle.time += dt;
  cycle.vapour += settings.vapour * dt;
  if (plant.speed > 1 && cycle.time * plant.speed < 2) return;
  const drawn = drawnSoFar(engine);
  const burnt = engine.cylinders.reduce((sum, cylinder) => sum + cylinder.drawnBurnt, 0);
  plant.dryAir = Math.max(0, (drawn - burnt) / cycle.time / (1 + e.ambient.humidityRatio));
  plant.recirculated = (burnt - cycle.vapour) / cycle.time;
  for (const cylinder of engine.cylinders) {
    cylinder.drawn = 0;
    cylinder.drawnBurnt = 0;
  }
  cycle.time = 0;
  cycle.vapour = 0;
}
