import { describe, expect, it } from "vitest";
import { GAMMA_CHARGE } from "../engine/index.ts";
import { GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";
import { type AirFlows, type AirState, stepAirPath } from "./air-path.ts";
import { crankBreathing } from "./crank-breathing.ts";
import { type CrankCycle, crankResistances, crankSettings, runCrankCycle } from "./crank-cycle.ts";
import { newCrankEngine } from "./crank-engine.ts";
import { PETROL_WITH_METER } from "./families.ts";
import { ambientAt } from "./model-engine.ts";
import { rpm } from "./protocol.ts";
import { fullArea } from "./throttle-plate.ts";

const design = PETROL_WITH_METER;
const ambient = ambientAt({ altitude: 0, temperature: 293.15, relativeHumidity: 0 });
const resistances = crankResistances(design, 0.11);
const wideOpen = fullArea(design.intake.throttleBore);

function settled(speed: number, throttleArea: number, cycles: number): CrankCycle {
  const engine = newCrankEngine(design, ambient, resistances, 60e3);
  const settings = crankSettings(design, speed, throttleArea);
  for (let i = 0; i < cycles; i++) runCrankCycle(engine, settings);
  return runCrankCycle(engine, settings);
}

/** The cycle-averaged air path at the same speed, throttle and exhaust pressure, adiabatic, with this efficiency. */
function averaged(speed: number, throttleArea: number, efficiency: number, exhaustPressure: number) {
  const temperature = ambient.temperature;
  const state: AirState = {
    pressure1: ambient.pressure,
    pressure2: 60e3,
    temperature1: temperature,
    temperature2: temperature,
    recirculated: 0,
    ductFlow: 0,
  };
  const flows: AirFlows = { suction: 0, throttle: 0, leak: 0, boostLeak: 0, egr: 0, cylinder: 0, wallHeat: 0 };
  const constants = {
    volume1: design.intake.chargeVolume,
    volume2: design.intake.manifoldVolume,
    gasConstant: GAS_CONSTANT_DRY_AIR,
    ambientPressure: ambient.pressure,
    ambientTemperature: temperature,
    filterResistance: resistances.filter,
    coolerResistance: 0,
    ductInertia: 0,
  };
  const inputs = {
    compressorRatio: 1,
    inletTemperature: temperature,
    throttleArea,
    leakArea: 0,
    boostLeakArea: 0,
    egrArea: 0,
    exhaustPressure,
    egrTemperature: 400,
    draw: (efficiency * design.displacement * speed) / (2 * GAS_CONSTANT_DRY_AIR * temperature),
    residual: design.residualStrength / (GAMMA_CHARGE * (design.compressionRatio - 1)),
    wallTemperature: temperature,
    wallConductance: 0,
  };
  for (let i = 0; i < 1500; i++) stepAirPath(constants, state, inputs, flows, 0.02);
  return { flow: flows.cylinder, pressure: state.pressure2 };
}

describe("the engine by crank angle", () => {
  it("agrees with the cycle-averaged engine from idle to full load: flow within 1.5 %, manifold pressure within 5 %", () => {
    for (const speed of [rpm(800), rpm(3000)]) {
      const efficiency = crankBreathing(design, [speed])[0]![1];
      for (const area of [14e-6, 100e-6, wideOpen]) {
        const crank = settled(speed, area, area < 50e-6 ? 100 : 40);
        const mean = averaged(speed, area, efficiency, crank.exhaustPressure);
        const where = `${speed} 1/s, ${area} m2`;
        expect(Math.abs(mean.flow / crank.cylinderFlow - 1), where).toBeLessThan(0.015);
        expect(Math.abs(mean.pressure / crank.manifoldPressure - 1), where).toBeLessThan(0.05);
      }
    }
  });

  it("breathes wide open inside the published range for naturally aspirated engines, 0.75 to 1.05", () => {
    for (const [, efficiency] of crankBreathing(design, [rpm(1500), rpm(3000), rpm(4500), rpm(6000)])) {
      expect(efficiency).toBeGreaterThan(0.75);
      expect(efficiency).toBeLessThan(1.05);
    }
  });

  it("holds more residual gas at idle than wide open, and works in the range of petrol engines", () => {
    const idle = settled(rpm(800), 14e-6, 80);
    const full = settled(rpm(2500), wideOpen, 30);
    expect(idle.residual).toBeGreaterThan(2 * full.residual);
    expect(idle.residual).toBeLessThan(0.3);
    expect(full.meanPressure).toBeGreaterThan(9e5);
    expect(full.meanPressure).toBeLessThan(14e5);
    expect(idle.meanPressure).toBeLessThan(3e5);
  });

  it("passes as much through the duct as into the cylinders once settled", () => {
    const cycle = settled(rpm(2500), wideOpen, 60);
    expect(cycle.ductFlow / cycle.cylinderFlow).toBeCloseTo(1, 3);
  });

  it("lets a meter hear pulsation and even reversal wide open at low speed, and next to none behind a throttle", () => {
    const swing = (cycle: CrankCycle) => (Math.max(...cycle.heard) - Math.min(...cycle.heard)) / cycle.ductFlow;
    const low = settled(rpm(1500), wideOpen, 40);
    expect(swing(low)).toBeGreaterThan(2);
    expect(Math.min(...low.heard)).toBeLessThan(0);
    expect(swing(settled(rpm(5500), wideOpen, 40))).toBeLessThan(0.3);
    expect(swing(settled(rpm(1500), 40e-6, 60))).toBeLessThan(0.05);
  });

  it("loses air at low speed when the intake valve closes late", () => {
    const on = crankBreathing(design, [rpm(800)])[0]![1];
    const late = crankBreathing(design, [rpm(800)], 15)[0]![1];
    expect(late / on).toBeLessThan(0.97);
  });

  it("is the same to the bit when run again", () => {
    expect(settled(rpm(2500), wideOpen, 3)).toEqual(settled(rpm(2500), wideOpen, 3));
  });
});
