import { describe, expect, it } from "vitest";
import { firstOrderLag, lagResponse, undoFirstOrderLag } from "./first-order-lag.ts";

const times = Float64Array.from({ length: 400 }, (_, i) => 0.01 * i + 0.002 * Math.sin(i));

describe("firstOrderLag", () => {
  it("follows a ramp behind by its time constant", () => {
    const out = new Float64Array(times.length);
    firstOrderLag(times, times, 0.05, out);
    expect(times[399]! - out[399]!).toBeCloseTo(0.05, 10);
  });

  it("answers a step by 1 - exp(-t/tau), measured after the ramp to the step's first sample", () => {
    const even = Float64Array.from({ length: 100 }, (_, i) => i * 1e-3);
    const step = Float64Array.from({ length: 100 }, (_, i) => (i === 0 ? 0 : 1));
    const out = new Float64Array(100);
    firstOrderLag(even, step, 0.02, out);
    const left = 1 - out[1]!;
    expect(1 - out[81]!).toBeCloseTo(left * Math.exp(-0.08 / 0.02), 12);
  });

  it("is undone by its inverse", () => {
    const signal = Float64Array.from(times, (t) => Math.sin(3 * t) + 0.2 * t);
    const out = new Float64Array(times.length);
    const back = new Float64Array(times.length);
    firstOrderLag(times, signal, 0.03, out);
    undoFirstOrderLag(times, out, 0.03, back);
    for (let i = 0; i < times.length; i++) expect(back[i]).toBeCloseTo(signal[i]!, 9);
  });

  it("damps a sine as its frequency response says", () => {
    const fine = Float64Array.from({ length: 20_000 }, (_, i) => i * 1e-4);
    const frequency = 5;
    const out = new Float64Array(fine.length);
    firstOrderLag(
      fine,
      Float64Array.from(fine, (t) => Math.sin(2 * Math.PI * frequency * t)),
      0.05,
      out,
    );
    const late = out.subarray(10_000);
    expect(Math.max(...late)).toBeCloseTo(lagResponse(frequency, 0.05).gain, 4);
  });

  it("refuses times that stand still", () => {
    const out = new Float64Array(2);
    expect(() => firstOrderLag(Float64Array.from([0, 0]), Float64Array.from([1, 2]), 1, out)).toThrow(/time step/);
  });
});
