/** A petrol engine whose recirculation valve the computer sets by position: where it opens, and what its faults do. */
import { describe, expect, it } from "vitest";
import { seededRandom } from "../numerics/index.ts";
import type { EngineDesign } from "./engine-design.ts";
import { engineFileOf } from "./engine-file.ts";
import { buildEngine, PETROL_WITH_PRESSURE } from "./families.ts";
import { ambientAt } from "./model-engine.ts";
import { prepareEngine } from "./prepared-engine.ts";
import { rpm } from "./protocol.ts";
import { runEngine } from "./run-engine.ts";
import { AS_METER, AS_PRESSURE, shiftOf } from "./signature-rig.ts";
import { testerChannels } from "./standard-recorders.ts";

const valve = { egrValveArea: 10e-6 };
const byMeter = { ...AS_METER, ...valve };
const byPressure = { ...AS_PRESSURE, ...valve };

describe("recirculation set by position", () => {
  it("is commanded shut at idle, at full load and on the overrun, and open at cruise, where it is a tenth of the charge", () => {
    const ambient = ambientAt({ altitude: 0, temperature: 293, relativeHumidity: 0.4 });
    const t = runEngine(
      prepareEngine(buildEngine(byMeter, 1, 0), ambient, []),
      [
        { do: "idle", seconds: 15 },
        { do: "drive", seconds: 15, speed: rpm(2400), load: 0.55 },
        { do: "pull", seconds: 8, from: rpm(2400), to: rpm(4000) },
        { do: "overrun", seconds: 6, from: rpm(4000), to: rpm(1500) },
      ],
      { random: seededRandom(1) },
    );
    const opening = (time: number) => t.egrCommanded[Math.round(time / t.step)]!;
    expect([opening(14), opening(36), opening(43)]).toEqual([0, 0, 0]);
    expect(opening(28)).toBe(1);
    const cruise = Math.round(28 / t.step);
    const share = t.recirculatedFlow[cruise]! / (t.recirculatedFlow[cruise]! + t.airIntoCylinders[cruise]!);
    expect(share).toBeGreaterThan(0.06);
    expect(share).toBeLessThan(0.14);
  });

  it("leaves the trims of a healthy engine within 1.5 % of the same engine without it, under both strategies", () => {
    const trim = (design: EngineDesign) => {
      const ambient = ambientAt({ altitude: 0, temperature: 293, relativeHumidity: 0.4 });
      const t = runEngine(
        prepareEngine(buildEngine(design, 1, 0), ambient, []),
        [{ do: "drive", seconds: 30, speed: rpm(2400), load: 0.55 }],
        { random: seededRandom(1) },
      );
      let sum = 0;
      const first = Math.round(20 / t.step);
      for (let i = first; i < t.rows; i++) sum += (1 + t.shortTrim[i]!) * (1 + t.longTrim[i]!);
      return sum / (t.rows - first);
    };
    expect(Math.abs(trim(byMeter) / trim(AS_METER) - 1)).toBeLessThan(0.015);
    // with its sensor in the manifold, where the warm gas is seen
    const valved = { ...PETROL_WITH_PRESSURE, egrValveArea: 8e-6 };
    expect(Math.abs(trim(valved) / trim(PETROL_WITH_PRESSURE) - 1)).toBeLessThan(0.015);
  });

  it("egr-low-flow: the pressure reads low at cruise and lean under the pressure strategy; the meter stays true", () => {
    const s = shiftOf({ cause: "egr-low-flow", size: 0.2 }, byMeter);
    expect(s.cruise.pressure).toBeLessThan(-0.02);
    for (const part of ["idle", "full"] as const) expect(Math.abs(s[part].pressure)).toBeLessThan(0.01);
    expect(Math.abs(s.cruise.meter)).toBeLessThan(0.01);
    expect(Math.abs(s.cruise.trim)).toBeLessThan(0.012);
    expect(shiftOf({ cause: "egr-low-flow", size: 0.2 }, byPressure).cruise.trim).toBeGreaterThan(0.02);
  });

  it("is told by the engine file and by the tester", () => {
    expect(engineFileOf(byMeter)).toMatchObject({ egr: "fitted", egrControl: "position" });
    expect(testerChannels("petrol-with-meter", byMeter)).toContain("egrCommanded");
    expect(testerChannels("petrol-with-meter", AS_METER)).not.toContain("egrCommanded");
  });
});
