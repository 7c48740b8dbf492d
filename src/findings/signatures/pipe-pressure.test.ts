import { describe, expect, it } from "vitest";
import { AMBIENT, type Change, CRUISE, FULL, modelOf } from "../../../test/signatures/signature-models.ts";
import { orificeFlowFunction } from "../../gas/index.ts";
import { plateOpening, type TallyModel } from "../../tally/index.ts";
import { pipePressure } from "./pipe-pressure.ts";

const AIR = Math.sqrt(287.05 * 298);
/** idle; a light load that spins no charger; a plate that holds back; nearly open */
const OPENINGS = [0.14, 0.2, 0.3, 0.8];
const PRESSURES = [35, 60, 85, 180];
const HELD = 2;
const TIGHT = () => 0;

const boostedModel = (readings: NonNullable<Change["readings"]>) =>
  modelOf({ engine: { induction: "boosted" }, pressures: PRESSURES, readings });

/** A boosted engine whose flows are what its plate, with a scale of 1.1, passes from 99, 99, `pipe` and 182 kPa. */
function boosted(pipe: number, more: NonNullable<Change["readings"]> = {}, lost = 0): TallyModel {
  const { engine, points } = boostedModel({ throttlePosition: OPENINGS });
  const plate = plateOpening(engine, points)!;
  const meterFlow = [99e3, 99e3, pipe, 182e3].map((upstream, i) => {
    const area = 1.1 * plate.at(points[i]!)!.area;
    return (area * upstream * orificeFlowFunction((1000 * PRESSURES[i]!) / upstream)) / AIR + (i === HELD ? lost : 0);
  });
  return boostedModel({ throttlePosition: OPENINGS, meterFlow, ...more });
}

describe("pipePressure", () => {
  it("finds what a part-open throttle holds back, where the manifold stands below ambient", () => {
    const pipe = pipePressure(boosted(125e3), TIGHT);
    expect(pipe[HELD]! / 125e3).toBeCloseTo(1, 2);
    expect(pipe[FULL]! / 182e3).toBeCloseTo(1, 2);
    expect(pipe[CRUISE]!).toBeLessThanOrEqual(1000 * AMBIENT);
    expect(pipe[CRUISE]!).toBeGreaterThan(1000 * AMBIENT - 100);
  });

  it("counts what is lost before the throttle as not passing it", () => {
    const model = boosted(125e3, {}, 0.004);
    expect(pipePressure(model, () => 0.004)[HELD]! / 125e3).toBeCloseTo(1, 2);
    expect(pipePressure(model, TIGHT)[HELD]!).toBeGreaterThan(128e3);
  });

  it("takes the pipe of a charger at rest below ambient by the loss of the filter", () => {
    const pipe = pipePressure(boosted(99e3), TIGHT);
    expect(pipe[HELD]!).toBeLessThan(1000 * AMBIENT);
    expect(pipe[HELD]!).toBeGreaterThan(1000 * AMBIENT - 2500);
  });

  it("believes a reading before the throttle's word, and the manifold where neither tells", () => {
    expect(pipePressure(boosted(125e3, { boostPressure: [99e3, 99e3, 115e3, 182e3] }), TIGHT)[HELD]!).toBe(115e3);
    const blind = pipePressure(boosted(125e3, { throttlePosition: OPENINGS.map(() => null) }), TIGHT);
    expect(blind[HELD]!).toBeLessThan(1000 * AMBIENT);
    expect(blind[FULL]!).toBe(180e3);
  });
});
