// What the intake loses at full load, as an observation without air in it.
import { describe, expect, it } from "vitest";
import { modelOf, STATES } from "../../../test/signatures/signature-models.ts";

const OPEN = [0.14, 0.25, 0.85, 0.85];
const drop = (change: Parameters<typeof modelOf>[0]) =>
  modelOf({ readings: { throttlePosition: OPEN }, ...change }).standing.find(
    (s) => s.kind === "full-load-pressure-drop",
  );

describe("the pressure lost at full load", () => {
  it("is barometer less manifold at the largest flow, beyond what a sound filter takes", () => {
    const seen = drop({ pressures: [35, 60, 96, 90] })!;
    expect(seen.reading).toBeCloseTo(99 - 90 - 2.5, 9);
    expect(seen.unit).toBe("kPa");
    // barometer 1 kPa, spread of sound intakes 1.5 kPa, pulses 0.3 kPa
    expect(Math.sqrt(seen.variance)).toBeGreaterThan(1.8);
    expect(Math.sqrt(seen.variance)).toBeLessThan(2);
  });

  it("hears the pressure sensor's offset with its sign turned", () => {
    const model = modelOf({ readings: { throttlePosition: OPEN } });
    const column = model.unknowns.find((u) => u.name === "pressure sensor offset")!.from;
    const seen = model.standing.find((s) => s.kind === "full-load-pressure-drop")!;
    expect(seen.basis[column]).toBeCloseTo(-model.assumptions.pressureOffset / 1000, 9);
  });

  it("is not claimed under boost, with the throttle part open, or where nothing told the throttle or the barometer", () => {
    expect(drop({ engine: { induction: "boosted" } })).toBeUndefined();
    expect(drop({ pressures: [35, 60, 140, 180] })).toBeUndefined();
    expect(drop({ readings: { throttlePosition: [0.14, 0.25, 0.85, 0.6] } })).toBeUndefined();
    expect(drop({ readings: {} })).toBeUndefined();
    expect(drop({ readings: { throttlePosition: OPEN, barometer: STATES.map(() => null) } })).toBeUndefined();
  });
});
