/** Filling and emptying of a volume against the closed form of a first-order system. */
import { describe, it } from "vitest";
import { manifoldPressureRate, manifoldTimeConstant, speedDensityFlow, storageFlow } from "../src/engine/index.ts";
import type * as storage from "../src/engine/manifold-storage.ts";
import { expectDigits } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const ENGINE = { volume: 0.003, displacement: 0.002, engineSpeed: 25, volumetricEfficiency: 0.85 };
const TEMPERATURE = 310;

function pressureAfter(duration: number, inflow: number): number {
  let pressure = 30_000;
  const steps = 20_000;
  const h = duration / steps;
  const rate = (p: number): number => {
    const outflow = speedDensityFlow({ ...ENGINE, manifoldPressure: p, chargeTemperature: TEMPERATURE });
    return manifoldPressureRate({ volume: ENGINE.volume, temperature: TEMPERATURE, inflow, outflow });
  };
  for (let i = 0; i < steps; i++) pressure += h * rate(pressure + (h / 2) * rate(pressure));
  return pressure;
}

describe("hendricks1990", () => {
  it("fills with the time constant 2V/(eta Vd N) towards the pressure that draws the inflow", () => {
    const inflow = 0.01;
    const tau = manifoldTimeConstant(ENGINE);
    const perPascal = speedDensityFlow({ ...ENGINE, manifoldPressure: 1, chargeTemperature: TEMPERATURE });
    const end = inflow / perPascal;
    for (const duration of [0.5 * tau, 2 * tau]) {
      expectDigits(pressureAfter(duration, inflow), end + (30_000 - end) * Math.exp(-duration / tau), 7);
    }
  });

  it("fails once the 2 of its time constant moves by ten tolerances", async () => {
    await expectCoefficientMatters<typeof storage>("src/engine/manifold-storage.ts", "return (2", 1e-4, (module) => {
      const tau = module.manifoldTimeConstant(ENGINE);
      const perPascal = speedDensityFlow({ ...ENGINE, manifoldPressure: 1, chargeTemperature: TEMPERATURE });
      const closed = 0.01 / perPascal + (30_000 - 0.01 / perPascal) * Math.exp(-0.05 / tau);
      expectDigits(pressureAfter(0.05, 0.01), closed, 6);
    });
  });

  it("stores V/(R T) for each pascal, and gives air back when it warms", () => {
    const gas = { volume: 0.003, temperature: 300, gasConstant: 287 };
    expectDigits(storageFlow({ ...gas, pressureRate: 1000 }), 3 / (287 * 300), 14);
    const warming = storageFlow({ ...gas, pressureRate: 0, pressure: 100_000, temperatureRate: 3 });
    expectDigits(warming, -(0.003 / (287 * 300)) * 1000, 14);
  });
});
