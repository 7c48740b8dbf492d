import { describe, expect, it } from "vitest";
import { seededRandom } from "../numerics/index.ts";
import type { HeatedDesign } from "./engine-design.ts";
import { drawParts } from "./engine-parts.ts";
import { PETROL_WITH_METER } from "./families.ts";
import { faultState } from "./fault.ts";
import { flowOf, kingLaw, voltageOf } from "./hot-wire-meter.ts";
import { meterResponse, printedCurve, readingOf, signalAt } from "./meter-response.ts";

const meter = PETROL_WITH_METER.meter as HeatedDesign;
const asDrawn = drawParts(seededRandom(1), 0);
const flows = { idle: 3e-3, largest: 0.1 };
const read = (massFlow: number, cause: "meter-offset" | "meter-fouled" | "meter-scaled", size: number) => {
  const response = meterResponse(meter, asDrawn, faultState([{ cause, size }]), flows);
  return readingOf(response, signalAt(response, massFlow, 1.2), 1.2);
};

describe("the meter of the model engine", () => {
  it("reads what it gets: voltage and flow undo each other", () => {
    const law = kingLaw(meter);
    for (const flow of [1e-4, 3e-3, 0.05, 0.22]) expect(flowOf(law, voltageOf(law, flow)) / flow).toBeCloseTo(1, 12);
    expect(voltageOf(law, 0)).toBeCloseTo(meter.voltageAtRest, 12);
    expect(voltageOf(law, meter.largestFlow)).toBeCloseTo(meter.largestVoltage, 12);
  });

  it("prints a curve that rises all along and begins at rest", () => {
    const curve = printedCurve(meter, 25);
    expect(curve[0]).toEqual([0.6, 0]);
    for (let i = 1; i < curve.length; i++) expect(curve[i]![1]).toBeGreaterThan(curve[i - 1]![1]);
  });

  it("fouled: errs by the planted size at 70 % of the largest flow, not at idle, and more the higher the flow", () => {
    const error = (flow: number) => read(flow, "meter-fouled", -0.12) / flow - 1;
    expect(error(0.07)).toBeCloseTo(-0.12, 3);
    expect(error(3e-3)).toBeCloseTo(0, 3);
    expect(error(0.03)).toBeLessThan(-0.02);
    expect(error(0.1)).toBeLessThan(error(0.07));
  });

  it("offset: errs by the planted grams per second at idle flow and relatively less above", () => {
    expect(read(3e-3, "meter-offset", 0.6) - 3e-3).toBeCloseTo(0.6e-3, 5);
    const relative = (flow: number) => read(flow, "meter-offset", 0.6) / flow - 1;
    expect(relative(3e-3)).toBeCloseTo(0.2, 2);
    expect(relative(0.03)).toBeGreaterThan(0.02);
    expect(relative(0.03)).toBeLessThan(0.14);
    expect(read(3e-3, "meter-offset", -0.6) - 3e-3).toBeCloseTo(-0.6e-3, 5);
  });

  it("scaled: reads the planted multiple everywhere", () => {
    for (const flow of [3e-3, 0.02, 0.09]) expect(read(flow, "meter-scaled", 0.8) / flow).toBeCloseTo(0.8, 4);
  });
});
