/** One engine cycle of the crank-angle engine on its own, at a speed and a throttle: what it draws, holds and does in the mean. */
import { GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";
import type { CrankEngine, CrankResistances, CrankSettings, Moved } from "./crank-engine.ts";
import { heatPerAir, stepCrank } from "./crank-engine.ts";
import type { EngineDesign } from "./engine-design.ts";
import { pressureOf, temperatureOf } from "./gas-volume.ts";
import { ambientAt } from "./model-engine.ts";
import { ductInertia } from "./prepared-engine.ts";

/** Means over one engine cycle. */
export type CrankCycle = {
  /** kg/s through the duct and into the cylinders */
  readonly ductFlow: number;
  readonly cylinderFlow: number;
  /** Pa, K */
  readonly manifoldPressure: number;
  readonly manifoldTemperature: number;
  readonly exhaustPressure: number;
  /** share of burnt gas in the charge where the intake has closed */
  readonly residual: number;
  /** Pa, work of a cycle over the displacement */
  readonly meanPressure: number;
  /** flow in the duct by crank angle, every degree: what a meter hears */
  readonly heard: Float64Array;
};

export const LONGEST_STEP = 210e-6; // s
export const CYLINDER_WALL = 400; // K

export const AMBIENT = ambientAt({ altitude: 0, temperature: 293.15, relativeHumidity: 0 });

/** Filter and exhaust as the cycle-averaged engine has them, for the largest flow given. */
export function crankResistances(design: EngineDesign, largestFlow: number): CrankResistances {
  return {
    filter: design.intake.filterDrop / largestFlow ** 2,
    cooler: design.intake.coolerDrop / largestFlow ** 2,
    exhaustArea: exhaustArea(design.exhaust.pressureRise / largestFlow ** 2, AMBIENT.pressure),
    ductInertia: ductInertia(design.intake.throttleBore),
  };
}

/** m2 effective of an orifice that loses k m^2, gas at 900 K. */
export function exhaustArea(resistance: number, pressure: number): number {
  return Math.sqrt((GAS_CONSTANT_DRY_AIR * 900) / (2 * pressure * resistance));
}

/** Naturally aspirated, no holes, air as outside. */
export function crankSettings(design: EngineDesign, speed: number, throttleArea: number): CrankSettings {
  return {
    speed,
    throttleArea,
    heatPerAir: heatPerAir(design, 1),
    intakeLate: 0,
    wallTemperature: CYLINDER_WALL,
    leakArea: 0,
    boostLeakArea: 0,
    egrArea: 0,
    egrTemperature: CYLINDER_WALL,
    compressorRatio: 1,
    inletTemperature: AMBIENT.temperature,
    backPressure: AMBIENT.pressure,
    vapour: 0,
    manifoldWall: { temperature: AMBIENT.temperature, conductance: 0 },
  };
}

/** One engine cycle of two turns. */
export function runCrankCycle(engine: CrankEngine, settings: CrankSettings): CrankCycle {
  const perDegree = Math.max(1, Math.ceil(1 / (360 * settings.speed) / LONGEST_STEP));
  const steps = 720 * perDegree;
  const dt = 2 / settings.speed / steps;
  const moved: Moved = { suction: 0, throttle: 0, leak: 0, boostLeak: 0, egr: 0 };
  const sums = { pressure: 0, temperature: 0, exhaust: 0 };
  const heard = new Float64Array(720);
  for (const cylinder of engine.cylinders) {
    cylinder.drawn = 0;
    cylinder.work = 0;
  }
  for (let i = 0; i < steps; i++) {
    stepCrank(engine, settings, dt, moved);
    sums.pressure += pressureOf(engine.manifold) / steps;
    sums.temperature += temperatureOf(engine.manifold) / steps;
    sums.exhaust += pressureOf(engine.exhaust) / steps;
    heard[Math.floor(i / perDegree)]! += engine.duct.flow / perDegree;
  }
  const count = engine.cylinders.length;
  const total = (key: "drawn" | "work") => engine.cylinders.reduce((sum, c) => sum + c[key], 0);
  return {
    ductFlow: (moved.suction * settings.speed) / 2,
    cylinderFlow: (total("drawn") * settings.speed) / 2,
    manifoldPressure: sums.pressure,
    manifoldTemperature: sums.temperature,
    exhaustPressure: sums.exhaust,
    residual: engine.cylinders.reduce((sum, c) => sum + c.trappedBurntShare / count, 0),
    meanPressure: total("work") / (count * engine.geometry.swept),
    heard,
  };
}
