import { describe, expect, it } from "vitest";
import { buildEngine, PETROL_WITH_METER } from "./families.ts";
import type { Fault } from "./fault.ts";
import { flowOf, kingLaw } from "./hot-wire-meter.ts";
import { ambientAt } from "./model-engine.ts";
import { prepareEngine } from "./prepared-engine.ts";
import { FAMILY_DESIGNS } from "./simulate-family.ts";
import { trueBreathing, trueMeterCurve } from "./true-curves.ts";

const ambient = ambientAt({ altitude: 0, temperature: 293, relativeHumidity: 0.4 });
const prepared = (faults: readonly Fault[], spread = 0) =>
  prepareEngine(buildEngine(PETROL_WITH_METER, 1, spread), ambient, faults);

describe("what was true of an engine", () => {
  it("is the maker's curve for an engine as drawn, and another by the planted factor with a scaled meter", () => {
    const design = PETROL_WITH_METER.meter!;
    if (design.kind !== "hot-wire") throw new Error("the first family has a hot wire");
    const law = kingLaw(design);
    for (const { signal, massFlow } of trueMeterCurve(prepared([])).slice(2)) {
      expect(flowOf(law, signal) / massFlow).toBeCloseTo(1, 3);
    }
    for (const { signal, massFlow } of trueMeterCurve(prepared([{ cause: "meter-scaled", size: 0.9 }])).slice(2)) {
      expect(flowOf(law, signal) / massFlow).toBeCloseTo(0.9, 3);
    }
  });

  it("is the drawn breathing for an engine as drawn, less by late valves at low speed", () => {
    const drawn = new Map(PETROL_WITH_METER.breathing);
    for (const { speed, efficiency } of trueBreathing(prepared([])))
      expect(efficiency).toBeCloseTo(drawn.get(speed)!, 2);
    const late = trueBreathing(prepared([{ cause: "valve-timing-shifted", size: 12 }]))[0]!;
    expect(late.efficiency / trueBreathing(prepared([]))[0]!.efficiency).toBeLessThan(0.96);
  });

  it("lies inside the published range of volumetric efficiency, 0.7 to 1.05, in every family and every healthy engine", () => {
    for (const design of Object.values(FAMILY_DESIGNS)) {
      for (let seed = 1; seed <= 40; seed++) {
        for (const { efficiency } of trueBreathing(prepareEngine(buildEngine(design, seed), ambient, []))) {
          expect(efficiency).toBeGreaterThan(0.7);
          expect(efficiency).toBeLessThan(1.05);
        }
      }
    }
  });
});
