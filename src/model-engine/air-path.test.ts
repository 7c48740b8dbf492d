import { describe, expect, it } from "vitest";
import { GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";
import { type AirFlows, type AirInputs, type AirState, stepAirPath } from "./air-path.ts";

const R = GAS_CONSTANT_DRY_AIR;
const constants = {
  volume1: 5e-3,
  volume2: 3e-3,
  gasConstant: R,
  ambientPressure: 101_325,
  ambientTemperature: 293.15,
  filterResistance: 1e-3,
  coolerResistance: 0,
  ductInertia: 180,
};
const still: AirInputs = {
  compressorRatio: 1,
  inletTemperature: 293.15,
  throttleArea: 0,
  leakArea: 0,
  boostLeakArea: 0,
  egrArea: 0,
  exhaustPressure: 101_325,
  egrTemperature: 400,
  draw: 0,
  residual: 0,
  wallTemperature: 293.15,
  wallConductance: 0,
};
const flows: AirFlows = { suction: 0, throttle: 0, leak: 0, boostLeak: 0, egr: 0, cylinder: 0, wallHeat: 0 };
const at = (pressure2: number): AirState => ({
  pressure1: 101_325,
  pressure2,
  temperature1: 293.15,
  temperature2: 293.15,
  recirculated: 0,
  ductFlow: 0,
});

describe("stepAirPath", () => {
  it("lets 0.1555 g/s through each mm2 of a choked hole at discharge 0.65, 101.3 kPa, 20 degC", () => {
    const state = at(30e3);
    stepAirPath(constants, state, { ...still, leakArea: 0.65e-6 }, flows, 1e-4);
    expect(flows.leak * 1e3).toBeCloseTo(0.1555, 4);
  });

  it("empties the manifold with the time constant of its closed form when the engine alone draws", () => {
    // Isothermal: dp/dt = -(R T/V) draw p, so tau = V/(R T draw). A wall of great conductance keeps it isothermal.
    const draw = 1e-7;
    const tau = constants.volume2 / (R * 293.15 * draw);
    const state = at(90e3);
    const dt = tau / 4000;
    for (let i = 0; i < 4000; i++) stepAirPath(constants, state, { ...still, draw, wallConductance: 1e6 }, flows, dt);
    expect(state.pressure2 / 90e3).toBeCloseTo(Math.exp(-1), 3);
  });

  it("heats the manifold as an adiabatic vessel filled from rest does: gamma times the temperature of the air let in", () => {
    const state = at(400);
    for (let i = 0; i < 20_000; i++) stepAirPath(constants, state, { ...still, leakArea: 5e-5 }, flows, 1e-4);
    // Filled to p from nearly empty, without a wall: T = gamma T_in less the little air that was there.
    expect(state.pressure2 / 101_325).toBeCloseTo(1, 3);
    expect(state.temperature2 / 293.15).toBeGreaterThan(1.39);
    expect(state.temperature2 / 293.15).toBeLessThan(1.4);
  });

  it("settles at once in a very long step, as the steady state", () => {
    const u = { ...still, throttleArea: 14e-6, draw: 8e-8, residual: 0.08 };
    const slow = at(60e3);
    for (let i = 0; i < 5000; i++) stepAirPath(constants, slow, u, flows, 0.02);
    const steady = flows.cylinder;
    const quick = { ...at(60e3), temperature2: slow.temperature2, temperature1: slow.temperature1 };
    stepAirPath(constants, quick, u, flows, 1e4);
    expect(flows.cylinder / steady).toBeCloseTo(1, 4);
  });
});
