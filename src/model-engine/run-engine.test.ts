import { describe, expect, it } from "vitest";
import { seededRandom } from "../numerics/index.ts";
import { BOOSTED_BOTH, buildEngine, DIESEL_WITH_EGR, PETROL_WITH_METER } from "./families.ts";
import type { Fault } from "./fault.ts";
import { ambientAt } from "./model-engine.ts";
import { prepareEngine } from "./prepared-engine.ts";
import { type Protocol, roadDriving, rpm, standardRecording } from "./protocol.ts";
import { runEngine } from "./run-engine.ts";
import type { Trace } from "./trace.ts";

const ambient = ambientAt({ altitude: 300, temperature: 285, relativeHumidity: 0.7 });
const everything: readonly Fault[] = [
  { cause: "manifold-leak", size: 3 },
  { cause: "leak-before-throttle", size: 80 },
  { cause: "boost-leak", size: 4 },
  { cause: "egr-stuck-open", size: 3 },
];

const EVERY_STATE: Protocol = [
  { do: "key-on", seconds: 3 },
  { do: "idle", seconds: 12, accessoryTorque: 15 },
  { do: "snap", seconds: 5 },
  ...roadDriving(seededRandom(2), 30),
  { do: "pull", seconds: 6, from: rpm(1600), to: rpm(4200) },
  { do: "overrun", seconds: 5, from: rpm(4000), to: rpm(1300) },
];

let kept: Trace | null = null;
/** The standard recording of a healthy petrol engine, run once. */
function standard(): Trace {
  kept ??= runEngine(prepareEngine(buildEngine(PETROL_WITH_METER, 4), ambient, []), standardRecording(), {
    random: seededRandom(1),
  });
  return kept;
}

describe("runEngine", () => {
  it("loses no air: what enters, less what leaves, is stored, in every step from key on to overrun", () => {
    for (const design of [PETROL_WITH_METER, BOOSTED_BOTH, DIESEL_WITH_EGR]) {
      const prepared = prepareEngine(buildEngine(design, 4), ambient, everything);
      const t = runEngine(prepared, EVERY_STATE, { random: seededRandom(1) });
      let worst = 0;
      for (let i = 0; i < t.rows; i++) {
        const into = t.meterFlow[i]! + t.leakBeforeThrottleFlow[i]! + t.leakFlow[i]! + t.purgeFlow[i]! + t.egrFlow[i]!;
        const moist = t.airIntoCylinders[i]! * (1 + ambient.humidityRatio) + t.recirculatedFlow[i]!;
        worst = Math.max(worst, Math.abs(into - t.boostLeakFlow[i]! - moist - t.storage[i]!));
      }
      expect(worst).toBeLessThan(1e-12);
    }
  });

  it("idles at its idle speed, holds 2,500 rev/min, reaches full load within filter and throttle loss of ambient", () => {
    const t = standard();
    const at = (time: number) => Math.round(time / t.step);
    expect(t.speed[at(60)]! / PETROL_WITH_METER.idleSpeed).toBeCloseTo(1, 1);
    expect(t.speed[at(175)]! / rpm(2500)).toBeCloseTo(1, 2);
    const flow = t.meterFlow[at(60)]! * 1e3;
    expect(flow).toBeGreaterThan(2.5);
    expect(flow).toBeLessThan(4.5);
    const full = t.manifoldPressure[at(214)]!;
    expect(full).toBeGreaterThan(ambient.pressure - 5e3);
    expect(full).toBeLessThan(ambient.pressure);
    expect(t.manifoldPressure[5]! / ambient.pressure).toBeCloseTo(1, 3); // key on, engine off
    expect(t.speed[5]).toBe(0);
  });

  it("cuts fuel on the overrun, enriches at full load, says so in the loop state", () => {
    const t = standard();
    const at = (time: number) => Math.round(time / t.step);
    expect([t.loopState[at(60)], t.loopState[at(214)], t.loopState[at(220)]]).toEqual([2, 4, 4]);
    expect(t.lambda[at(214)]!).toBeLessThan(0.95);
    expect(t.pulseWidth[at(220)]).toBe(0);
    expect(t.lambdaReading[at(222)]!).toBeGreaterThan(3);
  });

  it("doses the same with fuel held against ambient as against the manifold, as long as the pressure sensor is right", () => {
    const trim = (pressureReference: "ambient" | "manifold", faults: readonly Fault[]) => {
      const design = { ...PETROL_WITH_METER, injectors: { ...PETROL_WITH_METER.injectors, pressureReference } };
      const t = runEngine(prepareEngine(buildEngine(design, 4, 0), ambient, faults), [{ do: "idle", seconds: 30 }], {
        random: seededRandom(1),
      });
      const last = t.longTrim.length - 1;
      return (1 + t.longTrim[last]!) * (1 + t.shortTrim.subarray(-500).reduce((sum, x) => sum + x, 0) / 500);
    };
    expect(trim("ambient", []) / trim("manifold", [])).toBeCloseTo(1, 2);
    // 10 kPa too high: the computer takes the fuel to be pressed out less than it is, 1/2 of 10 in 300 and 70 more
    const high: Fault = { cause: "map-biased", size: 10 };
    expect(trim("manifold", [high]) / trim("manifold", [])).toBeCloseTo(1, 2);
    expect(trim("ambient", [high]) / trim("ambient", [])).toBeCloseTo(1 - 0.5 * (10 / 370), 2);
  });

  it("stops the trims at their limit when a leak is too large for them, and the mixture stays lean", () => {
    const leak = prepareEngine(buildEngine(PETROL_WITH_METER, 4), ambient, [{ cause: "manifold-leak", size: 14 }]);
    const t = runEngine(leak, [{ do: "idle", seconds: 90 }], { random: seededRandom(1) });
    for (const column of [t.shortTrim, t.longTrim]) {
      expect(Math.max(...column)).toBeLessThanOrEqual(0.25);
    }
    const end = t.rows - 1;
    expect(t.longTrim[end]).toBeCloseTo(0.25, 6);
    expect(t.lambda[end]!).toBeGreaterThan(1.05);
  });

  it("holds a diesel's metered air at its set-point: a low meter makes the EGR valve close, not the reading fall", () => {
    const idle = [{ do: "idle", seconds: 60 }] as const;
    const run = (faults: readonly Fault[]) =>
      runEngine(prepareEngine(buildEngine(DIESEL_WITH_EGR, 4), ambient, faults), idle, { random: seededRandom(1) });
    const healthy = run([]);
    const low = run([{ cause: "meter-scaled", size: 0.8 }]);
    const end = healthy.rows - 1;
    expect(low.meterReading[end]! / healthy.meterReading[end]!).toBeCloseTo(1, 1);
    expect(low.airIntoCylinders[end]! / healthy.airIntoCylinders[end]!).toBeGreaterThan(1.15);
    expect(low.egrCommanded[end]!).toBeLessThan(healthy.egrCommanded[end]!);
  });
});
