import { describe, expect, it } from "vitest";
import { LAMBDA_OF_AIR, narrowProbeVoltage, newExhaust, stepExhaust } from "./exhaust-gas.ts";

describe("exhaust gas on its way to the probe", () => {
  it("arrives after the transport delay, sooner at high flow, and settles at the mixture of the cylinders", () => {
    const arrival = (speed: number, massFlow: number) => {
      const state = newExhaust();
      const u = { speed, massFlow, volume: 1.2e-3 };
      for (let i = 0; i < 600; i++) stepExhaust(state, { ...u, lambda: 1 }, 0.02);
      expect(state.atProbe).toBeCloseTo(1, 6);
      let steps = 0;
      while (state.atProbe < 1.1) {
        stepExhaust(state, { ...u, lambda: 1.2 }, 0.02);
        steps++;
      }
      return steps * 0.02;
    };
    const idle = arrival(13, 3.5e-3);
    // 1.5 cycles and the volume at 900 K, then about 0.7 of the lag
    expect(idle).toBeGreaterThan(3 / 13 + 0.12);
    expect(idle).toBeLessThan(3 / 13 + 0.12 + 0.2);
    expect(arrival(60, 40e-3)).toBeLessThan(idle / 1.7);
  });

  it("is air when no fuel burns", () => {
    const state = newExhaust();
    for (let i = 0; i < 500; i++) stepExhaust(state, { speed: 30, massFlow: 0.01, volume: 1e-3, lambda: 1e9 }, 0.02);
    expect(state.atProbe).toBeCloseTo(LAMBDA_OF_AIR, 6);
  });

  it("drives a narrow probe high when rich and low when lean, steep between", () => {
    expect(narrowProbeVoltage(0.95)).toBeGreaterThan(0.8);
    expect(narrowProbeVoltage(1.05)).toBeLessThan(0.12);
    expect(narrowProbeVoltage(1)).toBeCloseTo(0.46, 6);
  });
});
