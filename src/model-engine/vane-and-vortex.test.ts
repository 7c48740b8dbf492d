/** What weather and sensors do to meters that sense drag or volume, on the running engine. */
import { describe, expect, it } from "vitest";
import { seededRandom } from "../numerics/index.ts";
import { STANDARD_ATMOSPHERE } from "../quantities/index.ts";
import type { EngineDesign } from "./engine-design.ts";
import { BOOSTED_BOTH, buildEngine, PETROL_WITH_METER } from "./families.ts";
import { ambientAt } from "./model-engine.ts";
import { PETROL_WITH_VANE, PETROL_WITH_VORTEX } from "./older-families.ts";
import { prepareEngine } from "./prepared-engine.ts";
import { runEngine } from "./run-engine.ts";
import { shiftOf } from "./signature-rig.ts";

function idleRatio(design: EngineDesign, altitude: number): number {
  const ambient = { ...ambientAt({ altitude, temperature: 293, relativeHumidity: 0.4 }), humidityRatio: 0 };
  const trace = runEngine(prepareEngine(buildEngine(design, 1, 0), ambient, []), [{ do: "idle", seconds: 40 }], {
    random: seededRandom(1),
  });
  const end = trace.rows - 1;
  return trace.meterReading[end]! / trace.meterFlow[end]!;
}

const vane = PETROL_WITH_VANE.meter!;
const vaneForBoth: EngineDesign = {
  ...PETROL_WITH_VANE,
  meter: vane.kind === "vane" ? { ...vane, compensation: "temperature-and-pressure" } : vane,
};

describe("vane and vortex on the model engine", () => {
  it("a vane corrected for temperature alone reads sqrt(p_cal/p) times the truth at altitude; vortex, wire, film and a vane corrected for both stay true", () => {
    for (const altitude of [0, 2500]) {
      const pressure = ambientAt({ altitude, temperature: 293, relativeHumidity: 0 }).pressure;
      expect(idleRatio(PETROL_WITH_VANE, altitude)).toBeCloseTo(Math.sqrt(STANDARD_ATMOSPHERE / pressure), 2);
      for (const design of [PETROL_WITH_VORTEX, PETROL_WITH_METER, BOOSTED_BOTH, vaneForBoth]) {
        expect(idleRatio(design, altitude), design.note).toBeCloseTo(1, 2);
      }
    }
  });

  it("intake-temperature-biased: half of it on the vane, all of it on the vortex meter", () => {
    const fault = { cause: "intake-temperature-biased", size: 20 } as const;
    const whole = -Math.log(1 + 20 / 299);
    expect(shiftOf(fault, PETROL_WITH_VANE).cruise.meter).toBeCloseTo(whole / 2, 2);
    expect(shiftOf(fault, PETROL_WITH_VORTEX).cruise.meter).toBeCloseTo(whole, 2);
    expect(shiftOf(fault, PETROL_WITH_VORTEX).cruise.trim).toBeCloseTo(-whole, 1);
  });

  it("baro-biased: all of it on a vortex meter, none on a vane without pressure correction", () => {
    const fault = { cause: "baro-biased", size: 5 } as const;
    expect(shiftOf(fault, PETROL_WITH_VORTEX).cruise.meter).toBeCloseTo(Math.log(1 + 5 / 101.3), 2);
    expect(shiftOf(fault, PETROL_WITH_VANE).cruise.meter).toBeCloseTo(0, 2);
  });

  it("vane-tilted: the meter reads low throughout and the trims make up for it", () => {
    const s = shiftOf({ cause: "vane-tilted", size: 0.08 }, PETROL_WITH_VANE);
    expect(s.idle.meter).toBeLessThan(-0.05);
    expect(s.full.meter).toBeLessThan(-0.02);
    expect(s.idle.trim).toBeCloseTo(-s.idle.meter, 1);
    expect(s.idle.pressure).toBeCloseTo(0, 1);
  });
});
