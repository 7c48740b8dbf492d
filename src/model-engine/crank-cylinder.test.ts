import { describe, expect, it } from "vitest";
import { type CrankCylinder, type Running, stepCylinder } from "./crank-cylinder.ts";
import { crankGeometry, cylinderVolume, VALVE_TIMING } from "./crank-geometry.ts";
import { PETROL_WITH_METER } from "./families.ts";
import { GAMMA, gasVolume, pressureOf, temperatureOf } from "./gas-volume.ts";
import { type KernelFlow, orificeKernel } from "./orifice-kernel.ts";

const g = crankGeometry(PETROL_WITH_METER);
const kernel: KernelFlow = { flow: 0, byFirst: 0, bySecond: 0 };
const flow = (a: number, b: number, forward: number, backward: number) => {
  orificeKernel(kernel, a, b, forward, backward);
  return kernel.flow;
};
const motored: Running = { speed: 25, heatPerAir: 0, intakeLate: 0, wallTemperature: null };

function cylinderAt(degrees: number, pressure: number, temperature: number): CrankCylinder {
  const gas = gasVolume(pressure, temperature, cylinderVolume(g, degrees));
  return { gas, heat: 0, released: 0, trappedBurntShare: 0, drawn: 0, drawnBurnt: 0, work: 0 };
}

function turn(cylinder: CrankCylinder, from: number, to: number, running: Running) {
  const intake = gasVolume(60e3, 310, 3e-3);
  const exhaust = gasVolume(102e3, 800, 3e-3, 1);
  for (let degrees = from; degrees < to; degrees++) {
    stepCylinder(
      g,
      cylinder,
      { degrees: degrees % 720, step: 1, dt: 1 / (360 * running.speed), intake, exhaust },
      running,
      flow,
    );
  }
  return { intake, exhaust };
}

/** ln p ratio over ln V ratio from 600 to 710 degrees: both valves shut. */
function exponent(running: Running): number {
  const cylinder = cylinderAt(600, 95e3, 330);
  const before = { pressure: pressureOf(cylinder.gas), volume: cylinder.gas.volume };
  turn(cylinder, 600, 695, running);
  return Math.log(pressureOf(cylinder.gas) / before.pressure) / Math.log(before.volume / cylinder.gas.volume);
}

describe("a cylinder by crank angle", () => {
  it("motored without wall heat, compresses by the polytropic law with gamma", () => {
    expect(exponent(motored)).toBeCloseTo(GAMMA, 9);
  });

  it("motored with walls, compresses with an exponent below gamma and above 1.25, nearer to gamma the faster it turns", () => {
    const slow = exponent({ ...motored, speed: 10, wallTemperature: 380 });
    const fast = exponent({ ...motored, speed: 90, wallTemperature: 380 });
    expect(slow).toBeGreaterThan(1.25);
    expect(slow).toBeLessThan(fast);
    expect(fast).toBeLessThan(GAMMA);
  });

  it("keeps mass and energy over a whole cycle with both valves, to rounding", () => {
    const cylinder = cylinderAt(0, 1.8e6, 700);
    const before = { mass: cylinder.gas.mass, energy: cylinder.gas.energy };
    const { intake, exhaust } = turn(cylinder, 0, 720, motored);
    const start = [gasVolume(60e3, 310, 3e-3), gasVolume(102e3, 800, 3e-3, 1)];
    const mass = (volumes: readonly { readonly mass: number }[]) => volumes.reduce((sum, v) => sum + v.mass, 0);
    const energy = (volumes: readonly { readonly energy: number }[]) => volumes.reduce((sum, v) => sum + v.energy, 0);
    expect(mass([intake, exhaust, cylinder.gas]) / (mass(start) + before.mass)).toBeCloseTo(1, 12);
    const kept = energy([intake, exhaust, cylinder.gas]) + cylinder.work;
    expect(kept / (energy(start) + before.energy)).toBeCloseTo(1, 12);
    expect(Math.abs(cylinder.drawn)).toBeGreaterThan(1e-5);
  });

  it("releases the heat of the fresh air it holds, all but exp(-5) of it, and leaves burnt gas", () => {
    const running: Running = { ...motored, heatPerAir: 2e6 };
    const cylinder = cylinderAt(690, 1.2e6, 650);
    const { mass, energy } = cylinder.gas;
    turn(cylinder, 690, 780, running);
    expect((cylinder.gas.energy + cylinder.work - energy) / (mass * 2e6)).toBeCloseTo(1 - Math.exp(-5), 3);
    expect(cylinder.gas.burnt / mass).toBeGreaterThan(0.99);
    expect(temperatureOf(cylinder.gas)).toBeGreaterThan(1800);
  });

  it("blows down and traps burnt gas where its valves say", () => {
    const cylinder = cylinderAt(100, 600e3, 1800);
    cylinder.gas.burnt = cylinder.gas.mass;
    const { exhaust } = turn(cylinder, 100, 330, motored);
    expect(pressureOf(cylinder.gas) / pressureOf(exhaust)).toBeGreaterThan(0.98);
    expect(pressureOf(cylinder.gas) / pressureOf(exhaust)).toBeLessThan(1.1);
    turn(cylinder, 330, VALVE_TIMING.intakeCloses + 2, motored);
    expect(cylinder.trappedBurntShare).toBeGreaterThan(0.03);
    expect(cylinder.trappedBurntShare).toBeLessThan(0.25);
  });
});
