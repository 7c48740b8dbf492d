/**
 * The engine by crank angle: duct with inertia, volume before the throttle, throttle, manifold, cylinders, exhaust manifold.
 * The same drawing as the cycle-averaged engine; what that one has as efficiency and residual gas is computed here.
 *
 * Equation    dm/dt = (A/L)(p_a - p_1 - k m|m|)                                inertia of the duct                  (1)
 *             volumes and cylinders exchange gas by the orifice flow, gas-volume.ts, crank-cylinder.ts
 * Symbols     m kg/s in the duct | A, L m2, m its section and length | k Pa s2/kg2 of filter and duct
 * Validity    naturally aspirated, one bank, no EGR; volumes are well mixed: no waves in runners
 * Numerics    one degree or 210 us, whichever is shorter (60 us change the flow by 1 % at 800 rev/min wide open,
 *             nothing above 2,500); mass kept to rounding
 * Source      [heywood1988] 14.3; (1) Newton's law on the column of air. Duct 0.6 m of 65 mm: common practice, no source
 * Check       crank-engine.test.ts
 */
import { fuelProperties } from "../engine/index.ts";
import { assert } from "../quantities/index.ts";
import { type CrankCylinder, type Running, stepCylinder } from "./crank-cylinder.ts";
import { type CrankGeometry, crankGeometry, cylinderVolume } from "./crank-geometry.ts";
import type { EngineDesign } from "./engine-design.ts";
import {
  type GasVolume,
  gasVolume,
  move,
  type OrificeFlow,
  pressureOf,
  temperatureOf,
  throughHole,
} from "./gas-volume.ts";
import type { Ambient } from "./model-engine.ts";
import { type KernelFlow, orificeKernel } from "./orifice-kernel.ts";

export type CrankEngine = {
  readonly geometry: CrankGeometry;
  readonly cylinders: readonly CrankCylinder[];
  readonly duct: { flow: number };
  readonly before: GasVolume;
  readonly manifold: GasVolume;
  readonly exhaust: GasVolume;
  readonly ambient: Ambient;
  /** Pa s2/kg2 of filter, and of the exhaust at ambient density */
  readonly filterResistance: number;
  readonly exhaustArea: number;
  degrees: number;
};

export type CrankSettings = Running & { /** m2 effective */ readonly throttleArea: number };

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

const DUCT = { length: 0.6, area: (Math.PI / 4) * 0.065 ** 2 };
const LONGEST_STEP = 210e-6; // s
const EXHAUST_TEMPERATURE = 900;
const BURNT_SHARE = 0.75; // of the heating value that stays in the gas: the wall heat of combustion is not in crank-cylinder.ts

export function heatPerAir(design: EngineDesign, lambda: number): number {
  return (BURNT_SHARE * 43e6) / (fuelProperties(design.fuel).stoichiometricAirFuelRatio * Math.max(lambda, 1));
}

export function newCrankEngine(
  design: EngineDesign,
  ambient: Ambient,
  resistances: { readonly filter: number; readonly exhaustArea: number },
  manifoldPressure: number,
): CrankEngine {
  assert(design.charger === null, "the crank-angle engine is naturally aspirated");
  const geometry = crankGeometry(design);
  const { pressure, temperature } = ambient;
  return {
    geometry,
    cylinders: Array.from({ length: design.cylinders }, (_, i) => ({
      gas: gasVolume(manifoldPressure, 400, cylinderVolume(geometry, (720 * i) / design.cylinders), 0.1),
      heat: 0,
      trappedBurntShare: 0,
      released: 0,
      drawn: 0,
      work: 0,
    })),
    duct: { flow: 0 },
    before: gasVolume(pressure, temperature, design.intake.chargeVolume),
    manifold: gasVolume(manifoldPressure, temperature + 20, design.intake.manifoldVolume),
    exhaust: gasVolume(pressure * 1.01, EXHAUST_TEMPERATURE, 3e-3, 1),
    ambient,
    filterResistance: resistances.filter,
    exhaustArea: resistances.exhaustArea,
    degrees: 0,
  };
}

const kernel: KernelFlow = { flow: 0, byFirst: 0, bySecond: 0 };
const orifice: OrificeFlow = (first, second, forward, backward) => {
  orificeKernel(kernel, first, second, forward, backward);
  return kernel.flow;
};

/** One engine cycle of two turns. */
export function runCrankCycle(engine: CrankEngine, settings: CrankSettings): CrankCycle {
  const perDegree = Math.max(1, Math.ceil(1 / (360 * settings.speed) / LONGEST_STEP));
  const step = 1 / perDegree;
  const sums = { duct: 0, pressure: 0, temperature: 0, exhaust: 0 };
  const heard = new Float64Array(720);
  for (const cylinder of engine.cylinders) {
    cylinder.drawn = 0;
    cylinder.work = 0;
  }
  for (let i = 0; i < 720 * perDegree; i++) {
    stepCrank(engine, settings, step);
    sums.duct += engine.duct.flow;
    sums.pressure += pressureOf(engine.manifold);
    sums.temperature += temperatureOf(engine.manifold);
    sums.exhaust += pressureOf(engine.exhaust);
    heard[Math.floor(i / perDegree)]! += engine.duct.flow / perDegree;
  }
  const n = 720 * perDegree;
  const count = engine.cylinders.length;
  const total = (key: "drawn" | "work") => engine.cylinders.reduce((sum, c) => sum + c[key], 0);
  return {
    ductFlow: sums.duct / n,
    cylinderFlow: (total("drawn") * settings.speed) / 2,
    manifoldPressure: sums.pressure / n,
    manifoldTemperature: sums.temperature / n,
    exhaustPressure: sums.exhaust / n,
    residual: engine.cylinders.reduce((sum, c) => sum + c.trappedBurntShare / count, 0),
    meanPressure: total("work") / (count * engine.geometry.swept),
    heard,
  };
}

function stepCrank(engine: CrankEngine, settings: CrankSettings, step: number): void {
  const { before, manifold, exhaust, duct, ambient, cylinders, geometry } = engine;
  const dt = step / (360 * settings.speed);
  // Implicit in the drop, explicit in the pressures: the volumes are large.
  const push = (DUCT.area / DUCT.length) * dt;
  const drop = engine.filterResistance * Math.abs(duct.flow);
  duct.flow = (duct.flow + push * (ambient.pressure - pressureOf(before))) / (1 + push * drop);
  enter(before, ambient, duct.flow * dt);
  move(before, manifold, throughHole(before, manifold, settings.throttleArea, dt, orifice));
  for (let i = 0; i < cylinders.length; i++) {
    const cylinder = cylinders[i]!;
    const degrees = (engine.degrees + (720 * i) / cylinders.length) % 720;
    if (degrees > 400 && degrees < 410) cylinder.heat = 0; // a new charge
    stepCylinder(geometry, cylinder, { degrees, step, intake: manifold, exhaust }, settings, orifice);
  }
  const outside = gasVolume(ambient.pressure, EXHAUST_TEMPERATURE, 1, 1);
  move(exhaust, outside, throughHole(exhaust, outside, engine.exhaustArea, dt, orifice));
  engine.degrees = (engine.degrees + step) % 720;
}

/** Air from outside, or out of the duct. */
function enter(before: GasVolume, ambient: Ambient, amount: number): void {
  const outside = gasVolume(ambient.pressure, ambient.temperature, 1);
  move(outside, before, amount);
}
