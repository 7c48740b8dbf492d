import { describe, expect, it } from "vitest";
import { airViscosity } from "../../gas/index.ts";
import { hoseTimeConstant } from "./pressure-hose.ts";
import { intakePulseFrequency, sampledMeanError } from "./pressure-sampling.ts";
import { type PressureSensor, preparePressureSensor, pressureOfVoltage, voltageOfPressure } from "./pressure-sensor.ts";

function sensor(reads: "absolute" | "gauge" = "absolute"): PressureSensor {
  const result = preparePressureSensor({
    points: [
      [0.5, 20_000],
      [4.5, 115_000],
    ],
    reads,
    reference: 5,
  });
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

const AMBIENT = { ambientPressure: 98_000 };

describe("pressure sensor", () => {
  it("reads its points and gives the voltage back", () => {
    expect(pressureOfVoltage(sensor(), { voltage: 2.5, ...AMBIENT })).toEqual({ pressure: 67_500, inside: true });
    for (const supply of [{}, { reference: 4.9 }, { groundShift: 0.05 }]) {
      const voltage = voltageOfPressure(sensor(), { pressure: 43_210, ...AMBIENT, ...supply });
      expect(pressureOfVoltage(sensor(), { voltage, ...AMBIENT, ...supply }).pressure).toBeCloseTo(43_210, 6);
    }
  });

  it("does not feel a supply that the computer reads too, and is off by it where it does not", () => {
    const voltage = voltageOfPressure(sensor(), { pressure: 60_000, ...AMBIENT, reference: 4.8 });
    expect(pressureOfVoltage(sensor(), { voltage, ...AMBIENT, reference: 4.8 }).pressure).toBeCloseTo(60_000, 6);
    expect(pressureOfVoltage(sensor(), { voltage, ...AMBIENT }).pressure).toBeLessThan(59_000);
  });

  it("of a gauge sensor adds the ambient", () => {
    const absolute = pressureOfVoltage(sensor(), { voltage: 1, ...AMBIENT }).pressure;
    expect(pressureOfVoltage(sensor("gauge"), { voltage: 1, ...AMBIENT }).pressure).toBeCloseTo(absolute + 98_000, 6);
    expect(voltageOfPressure(sensor("gauge"), { pressure: absolute + 98_000, ...AMBIENT })).toBeCloseTo(1, 9);
  });

  it("marks voltages beyond its points and refuses points that turn back", () => {
    expect(pressureOfVoltage(sensor(), { voltage: 4.8, ...AMBIENT }).inside).toBe(false);
    const base = { reads: "absolute", reference: null } as const;
    expect(preparePressureSensor({ ...base, points: [[1, 2]] })).toMatchObject({ ok: false, reason: "too-few-points" });
    const turned = preparePressureSensor({
      ...base,
      points: [
        [1, 2],
        [2, 1],
      ],
    });
    expect(turned).toMatchObject({ ok: false, reason: "curve-not-monotone" });
  });
});

describe("sampling", () => {
  it("cancels over whole strokes, leaves all in step with them, and agrees with samples taken", () => {
    const at = { amplitude: 3000, frequency: 25, interval: 0.004, samples: 10 };
    expect(sampledMeanError(at)).toBeCloseTo(0, 8);
    expect(sampledMeanError({ ...at, interval: 0.04 })).toBe(3000);
    const odd = { amplitude: 3000, frequency: 26.3, interval: 0.0041, samples: 7 };
    let worst = 0;
    for (let phase = 0; phase < 2 * Math.PI; phase += 1e-3) {
      let sum = 0;
      for (let i = 0; i < 7; i++) sum += 3000 * Math.sin(2 * Math.PI * 26.3 * i * 0.0041 + phase);
      worst = Math.max(worst, Math.abs(sum / 7));
    }
    expect(sampledMeanError(odd)).toBeCloseTo(worst, 1);
    expect(intakePulseFrequency(50, 4)).toBe(100);
  });
});

describe("hose", () => {
  it("alone, with half its own volume at the end, takes 16 mu L^2/(d^2 p)", () => {
    const hose = { length: 0.5, bore: 0.003, sensorVolume: 0, pressure: 50_000, temperature: 310 };
    expect(hoseTimeConstant(hose)).toBeCloseTo((16 * airViscosity(310) * 0.5 ** 2) / (0.003 ** 2 * 50_000), 12);
    const volume = { ...hose, length: 0.05, bore: 0.001, sensorVolume: 1e-5 };
    const resistance = (128 * airViscosity(310) * 0.05) / (Math.PI * 0.001 ** 4);
    const whole = 1e-5 + (Math.PI / 8) * 0.001 ** 2 * 0.05;
    expect(hoseTimeConstant(volume)).toBeCloseTo((resistance * whole) / 50_000, 10);
  });

  it("is a few milliseconds with a normal hose and far slower pinched to a third", () => {
    const hose = { length: 0.5, bore: 0.003, sensorVolume: 1e-6, pressure: 50_000, temperature: 310 };
    const normal = hoseTimeConstant(hose);
    expect(normal).toBeLessThan(0.001);
    expect(hoseTimeConstant({ ...hose, bore: 0.001 }) / normal).toBeGreaterThan(20);
  });
});
