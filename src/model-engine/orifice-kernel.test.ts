import { describe, expect, it } from "vitest";
import { orificeMassFlow } from "../gas/index.ts";
import { GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";
import { type KernelFlow, orificeKernel } from "./orifice-kernel.ts";

const out: KernelFlow = { flow: 0, byFirst: 0, bySecond: 0 };
const temperature = 300;
const area = 1e-5;
const conductance = area / Math.sqrt(GAS_CONSTANT_DRY_AIR * temperature);
const reference = (first: number, second: number) =>
  orificeMassFlow({
    dischargeCoefficient: 1,
    area,
    upstreamPressure: first,
    upstreamTemperature: temperature,
    downstreamPressure: second,
  });

describe("orificeKernel", () => {
  it("equals the orifice flow of gas/ within 1e-6, choked and not, both ways", () => {
    for (const second of [0, 20e3, 52e3, 53.5e3, 80e3, 95e3, 99e3, 99.9e3, 100.2e3, 104e3, 180e3]) {
      orificeKernel(out, 100e3, second, conductance, conductance);
      expect(out.flow / reference(100e3, second) - 1).toBeCloseTo(0, 6);
    }
  });

  it("is odd and straight within 20 Pa of equal pressures, without a jump where it becomes so", () => {
    const at = (second: number) => {
      orificeKernel(out, 100e3, second, conductance, conductance);
      return out.flow;
    };
    expect(at(100e3)).toBe(0);
    expect(at(100e3 - 10)).toBeCloseTo(-at(100e3 + 10), 8);
    expect(at(100e3 - 10) / at(100e3 - 5)).toBeCloseTo(2, 6);
    expect(at(100e3 - 20.001) / at(100e3 - 19.999) - 1).toBeLessThan(1e-3);
  });

  it("gives the true slopes away from equal pressures, by finite difference", () => {
    for (const [first, second] of [
      [100e3, 30e3],
      [100e3, 60e3],
      [100e3, 80e3],
      [70e3, 110e3],
    ] as const) {
      const h = 1;
      const flow = (a: number, b: number) => {
        orificeKernel(out, a, b, conductance, conductance);
        return out.flow;
      };
      const byFirst = (flow(first + h, second) - flow(first - h, second)) / (2 * h);
      const bySecond = (flow(first, second + h) - flow(first, second - h)) / (2 * h);
      flow(first, second);
      expect(Math.abs(out.byFirst - byFirst)).toBeLessThan(2e-3 * Math.abs(byFirst));
      expect(Math.abs(out.bySecond - bySecond)).toBeLessThan(2e-3 * Math.abs(bySecond) + 1e-15);
    }
  });
});
