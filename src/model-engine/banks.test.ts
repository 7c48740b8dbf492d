import { describe, expect, it } from "vitest";
import { seededRandom } from "../numerics/index.ts";
import type { EngineDesign } from "./engine-design.ts";
import { buildEngine, PETROL_WITH_METER } from "./families.ts";
import type { Fault } from "./fault.ts";
import { ambientAt } from "./model-engine.ts";
import { prepareEngine } from "./prepared-engine.ts";
import { rpm } from "./protocol.ts";
import { runEngine } from "./run-engine.ts";

const twoBanks: EngineDesign = {
  ...PETROL_WITH_METER,
  note: "invented 3.0 L six-cylinder engine with two banks",
  displacement: 3e-3,
  cylinders: 6,
  banks: 2,
};
const ambient = ambientAt({ altitude: 0, temperature: 293, relativeHumidity: 0.4 });

function trims(faults: readonly Fault[], design = twoBanks): { readonly bank1: number; readonly bank2: number } {
  const trace = runEngine(
    prepareEngine(buildEngine(design, 1, 0), ambient, faults),
    [
      { do: "idle", seconds: 20 },
      { do: "drive", seconds: 30, speed: rpm(2200), load: 0.6 },
    ],
    { random: seededRandom(2) },
  );
  const first = Math.round(38 / trace.step);
  const mean = (short: Float64Array, long: Float64Array) => {
    let sum = 0;
    for (let i = first; i < trace.rows; i++) sum += Math.log((1 + short[i]!) * (1 + long[i]!));
    return sum / (trace.rows - first);
  };
  return { bank1: mean(trace.shortTrim, trace.longTrim), bank2: mean(trace.shortTrim2, trace.longTrim2) };
}

const near = (x: number, expected: number) => expect(Math.abs(x - expected)).toBeLessThan(0.015);

describe("an engine with two banks", () => {
  const healthy = trims([]);

  it("has the same trims on both when nothing is wrong or both share the cause", () => {
    near(healthy.bank1, healthy.bank2);
    const shared = trims([{ cause: "meter-scaled", size: 0.88 }]);
    near(shared.bank1 - healthy.bank1, -Math.log(0.88));
    near(shared.bank2 - healthy.bank2, -Math.log(0.88));
  });

  it("moves one bank's trims alone for a fault of one bank", () => {
    const faults: readonly (readonly [Fault, number])[] = [
      [{ cause: "fuel-delivery-scaled", size: 0.9, bank: 2 }, -Math.log(0.9)],
      [{ cause: "lambda-biased", size: 0.05, bank: 2 }, Math.log(1.05)],
      [{ cause: "misfire", size: 0.08, bank: 2 }, -Math.log(0.92)],
    ];
    for (const [fault, expected] of faults) {
      const s = trims([fault]);
      near(s.bank1 - healthy.bank1, 0);
      near(s.bank2 - healthy.bank2, expected);
    }
  });

  it("doses in all what one bank of all cylinders would", () => {
    const { banks: _, ...one } = twoBanks;
    const single = trims([{ cause: "fuel-unmetered", size: 0.1 }], one);
    const double = trims([{ cause: "fuel-unmetered", size: 0.1 }]);
    near(double.bank1, single.bank1);
    near(double.bank2, single.bank1);
    expect(single.bank1 - trims([], one).bank1).toBeLessThan(-0.03);
  });
});
