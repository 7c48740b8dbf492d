import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crankResistances, crankSettings } from "./crank-cycle.ts";
import { newCrankEngine, stepCrank } from "./crank-engine.ts";
import { PETROL_WITH_METER } from "./families.ts";
import { ambientAt } from "./model-engine.ts";

const design = PETROL_WITH_METER;
const ambient = ambientAt({ altitude: 0, temperature: 293, relativeHumidity: 0 });

describe("stepCrank", () => {
  it("keeps mass and energy to rounding when nothing crosses the boundary: motored, walls without heat, duct and exhaust shut", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 110, noNaN: true }),
        fc.double({ min: 1e-6, max: 2e-3, noNaN: true }),
        fc.double({ min: 25e3, max: 160e3, noNaN: true }),
        fc.constantFrom(0, 3e-5),
        (speed, throttleArea, pressure, egrArea) => {
          const shut = { ...crankResistances(design, 0.11), exhaustArea: 0, ductInertia: 1e15 };
          const engine = newCrankEngine(design, ambient, shut, pressure);
          // What cools recirculated gas is outside the balance: the energy is weighed without it.
          const settings = {
            ...crankSettings(design, speed, throttleArea),
            heatPerAir: 0,
            wallTemperature: null,
            egrArea,
          };
          const parts = () => [engine.before, engine.manifold, engine.exhaust, ...engine.cylinders.map((c) => c.gas)];
          const mass = () => parts().reduce((sum, gas) => sum + gas.mass, 0);
          const energy = () => parts().reduce((sum, gas) => sum + gas.energy, 0);
          const before = { mass: mass(), energy: energy() };
          const moved = { suction: 0, throttle: 0, leak: 0, boostLeak: 0, egr: 0 };
          for (let i = 0; i < 1500; i++) stepCrank(engine, settings, 1 / (360 * speed), moved);
          const work = engine.cylinders.reduce((sum, c) => sum + c.work, 0);
          expect(Math.abs(moved.suction)).toBeLessThan(1e-9);
          expect(Math.abs(mass() / before.mass - 1)).toBeLessThan(1e-9);
          if (egrArea === 0) expect(Math.abs((energy() + work) / before.energy - 1)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 12 },
    );
  });
});
