/**
 * The engine by crank angle: duct with inertia, volume before the throttle, throttle, manifold, cylinders, exhaust manifold.
 * The same drawing as the cycle-averaged engine; what that one has as efficiency and residual gas is computed here.
 *
 * Equation    P (L/A) dm/dt = P p_a - p_1 - k m|m|                             inertia of the duct                  (1)
 *             what is faster than a tenth of a second in m dies with a time constant of its own: losses of sound
 *             volumes, holes, valves and cylinders exchange gas by the orifice flow, gas-volume.ts, crank-cylinder.ts
 * Symbols     m kg/s in the duct | A, L m2, m its section and length | k Pa s2/kg2 of filter, duct and cooler | P ratio of the compressor
 * Validity    volumes are well mixed: no waves in runners; recirculated gas arrives cooled, what the cooler takes is not accounted for
 * Numerics    one degree or 210 us, whichever is shorter (60 us change the flow by 1 % at 800 rev/min wide open,
 *             nothing above 2,500); mass kept to rounding
 * Source      [heywood1988] 14.3; (1) Newton's law on the column of air
 * Check       crank-engine.test.ts, crank-plant.test.ts
 */
import { fuelProperties } from "../engine/index.ts";
import { type CrankCylinder, type Running, stepCylinder } from "./crank-cylinder.ts";
import { type CrankGeometry, crankGeometry, cylinderVolume } from "./crank-geometry.ts";
import type { EngineDesign } from "./engine-design.ts";
import {
  type GasVolume,
  gasVolume,
  move,
  type OrificeFlow,
  pressureOf,
  refill,
  temperatureOf,
  throughHole,
} from "./gas-volume.ts";
import type { Ambient } from "./model-engine.ts";
import { type KernelFlow, orificeKernel } from "./orifice-kernel.ts";

export type CrankEngine = {
  readonly geometry: CrankGeometry;
  readonly cylinders: readonly CrankCylinder[];
  /** kg/s */
  readonly duct: { flow: number; slow: number };
  readonly before: GasVolume;
  readonly manifold: GasVolume;
  readonly exhaust: GasVolume;
  /** what lies outside, refilled in every step: air, tail pipe, cooled recirculated gas */
  readonly outside: GasVolume;
  readonly tail: GasVolume;
  readonly cooled: GasVolume;
  readonly ambient: Ambient;
  /** Pa s2/kg2; m2 effective of the exhaust; L/A of (1), 1/m */
  readonly filterResistance: number;
  readonly coolerResistance: number;
  readonly exhaustArea: number;
  readonly ductInertia: number;
  degrees: number;
};

/** What holds during a step. Areas are effective, m2. */
export type CrankSettings = Running & {
  readonly throttleArea: number;
  readonly leakArea: number;
  readonly boostLeakArea: number;
  readonly egrArea: number;
  /** K */
  readonly egrTemperature: number;
  readonly compressorRatio: number;
  /** K of the air that enters the volume before the throttle */
  readonly inletTemperature: number;
  /** Pa behind the exhaust: ambient, or before the turbine */
  readonly backPressure: number;
  /** kg/s of fuel vapour that comes into being in the ports, as air of as many moles */
  readonly vapour: number;
  /** K, W/K from wall to gas in the manifold */
  readonly manifoldWall: { readonly temperature: number; readonly conductance: number };
};

/** kg that moved since it was set to nothing, forward positive: into the engine; boost leak outwards. */
export type Moved = { suction: number; throttle: number; leak: number; boostLeak: number; egr: number };

const EXHAUST_TEMPERATURE = 900;
const LARGE = 1e3; // m3
const SLOW = 0.1; // s: what is slower is flow, what is faster is sound
const RINGING = 0.05; // s in which sound in the duct dies by its losses [common practice, no source]
const BURNT_SHARE = 0.75; // of the heating value that stays in the gas: the wall heat of combustion is not in crank-cylinder.ts

export function heatPerAir(design: EngineDesign, lambda: number): number {
  return (BURNT_SHARE * 43e6) / (fuelProperties(design.fuel).stoichiometricAirFuelRatio * Math.max(lambda, 1));
}

export type CrankResistances = {
  readonly filter: number;
  readonly cooler: number;
  readonly exhaustArea: number;
  readonly ductInertia: number;
};

export function newCrankEngine(
  design: EngineDesign,
  ambient: Ambient,
  resistances: CrankResistances,
  manifoldPressure: number,
): CrankEngine {
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
      drawnBurnt: 0,
      work: 0,
    })),
    duct: { flow: 0, slow: 0 },
    before: gasVolume(pressure, temperature, design.intake.chargeVolume),
    manifold: gasVolume(manifoldPressure, temperature + 20, design.intake.manifoldVolume),
    exhaust: gasVolume(pressure * 1.01, EXHAUST_TEMPERATURE, 3e-3, 1),
    outside: gasVolume(pressure, temperature, LARGE),
    tail: gasVolume(pressure, EXHAUST_TEMPERATURE, LARGE, 1),
    cooled: gasVolume(pressure, temperature, LARGE, 1),
    ambient,
    filterResistance: resistances.filter,
    coolerResistance: resistances.cooler,
    exhaustArea: resistances.exhaustArea,
    ductInertia: resistances.ductInertia,
    degrees: 0,
  };
}

const kernel: KernelFlow = { flow: 0, byFirst: 0, bySecond: 0 };
const orifice: OrificeFlow = (first, second, forward, backward) => {
  orificeKernel(kernel, first, second, forward, backward);
  return kernel.flow;
};

/** `dt` seconds on; what moved is added to `moved`. */
export function stepCrank(engine: CrankEngine, s: CrankSettings, dt: number, moved: Moved): void {
  const { before, manifold, exhaust, outside, tail, ambient, cylinders, geometry } = engine;
  const step = 360 * s.speed * dt;
  refill(outside, ambient.pressure, s.inletTemperature);
  const sucked = stepDuct(engine, s, dt) * dt;
  move(outside, before, sucked);
  refill(outside, ambient.pressure, ambient.temperature);
  const lost = throughHole(before, outside, s.boostLeakArea, dt, orifice);
  move(before, outside, lost);
  const throttled = throughHole(before, manifold, s.throttleArea, dt, orifice);
  move(before, manifold, throttled);
  const leaked = throughHole(outside, manifold, s.leakArea, dt, orifice);
  move(outside, manifold, leaked);
  moved.suction += sucked;
  moved.boostLeak += lost;
  moved.throttle += throttled;
  moved.leak += leaked;
  moved.egr += recirculate(engine, s, dt);
  evaporate(engine, s.vapour * dt);
  const wall = s.manifoldWall;
  manifold.energy += wall.conductance * (wall.temperature - temperatureOf(manifold)) * dt;
  for (let i = 0; i < cylinders.length; i++) {
    const cylinder = cylinders[i]!;
    const degrees = (engine.degrees + (720 * i) / cylinders.length) % 720;
    if (degrees > 400 && degrees < 410) cylinder.heat = 0; // a new charge
    stepCylinder(geometry, cylinder, { degrees, step, dt, intake: manifold, exhaust }, s, orifice);
  }
  refill(tail, s.backPressure, EXHAUST_TEMPERATURE, 1);
  move(exhaust, tail, throughHole(exhaust, tail, engine.exhaustArea, dt, orifice));
  engine.degrees = (engine.degrees + step) % 720;
}

/** (1), implicit in the drop, explicit in the pressures: the volumes are large. */
function stepDuct(engine: CrankEngine, s: CrankSettings, dt: number): number {
  const { duct } = engine;
  const push = dt / (s.compressorRatio * engine.ductInertia);
  const drop = (s.compressorRatio * engine.filterResistance + engine.coolerResistance) * Math.abs(duct.flow);
  const head = s.compressorRatio * engine.ambient.pressure - pressureOf(engine.before);
  duct.flow = (duct.flow + push * head) / (1 + push * drop);
  duct.slow += (duct.flow - duct.slow) * (dt / SLOW);
  duct.flow -= (duct.flow - duct.slow) * (dt / RINGING);
  return duct.flow;
}

/** It takes room as the air does, and does not burn as air. */
function evaporate({ manifold, cooled }: CrankEngine, amount: number): void {
  if (amount === 0) return;
  refill(cooled, pressureOf(manifold), temperatureOf(manifold), 1);
  move(cooled, manifold, amount);
}

/** Out of the exhaust at its own heat, into the manifold cooled. Nothing flows back. */
function recirculate(engine: CrankEngine, s: CrankSettings, dt: number): number {
  const { exhaust, manifold, cooled } = engine;
  if (s.egrArea === 0) return 0;
  const pressure = pressureOf(exhaust);
  refill(cooled, pressure, s.egrTemperature, 1);
  const amount = Math.max(0, throughHole(cooled, manifold, s.egrArea, dt, orifice));
  move(cooled, manifold, amount);
  move(exhaust, cooled, amount);
  return amount;
}
