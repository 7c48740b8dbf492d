import { describe, expect, it } from "vitest";
import { seededRandom } from "../numerics/index.ts";
import type { MeterDesign } from "./engine-design.ts";
import { drawParts } from "./engine-parts.ts";
import { PETROL_WITH_METER } from "./families.ts";
import { type Fault, faultState } from "./fault.ts";
import { CALIBRATION_DENSITY, meterLaw } from "./meter-law.ts";
import { meterResponse, readingOf, signalAt } from "./meter-response.ts";
import { PETROL_WITH_VANE, PETROL_WITH_VORTEX } from "./older-families.ts";

const asDrawn = drawParts(seededRandom(1), 0);
const flows = { idle: 3e-3, largest: 0.1 };
const METERS = [PETROL_WITH_METER, PETROL_WITH_VANE, PETROL_WITH_VORTEX].map((design) => design.meter!);
const [wire, vane, vortex] = METERS as [MeterDesign, MeterDesign, MeterDesign];

function read(meter: MeterDesign, massFlow: number, density: number, assumed: number, faults: readonly Fault[] = []) {
  const response = meterResponse(meter, asDrawn, faultState(faults), flows);
  return readingOf(response, signalAt(response, massFlow, density), assumed);
}

describe("meters of the model engine", () => {
  it("undo their own signal at any flow between their ends", () => {
    for (const meter of METERS) {
      const law = meterLaw(meter);
      for (const flow of [2e-3, 8e-3, 0.03, 0.11]) expect(law.flowOf(law.signalOf(flow)) / flow).toBeCloseTo(1, 9);
      expect(law.flowOf(law.atRest)).toBe(0);
    }
  });

  it("read true in any air whose density the computer knows", () => {
    for (const meter of METERS) {
      for (const density of [0.9, 1.2, 1.4]) expect(read(meter, 0.02, density, density) / 0.02).toBeCloseTo(1, 3);
    }
  });

  it("err with density that is not corrected by the closed form: root for the vane, in full for the vortex, none for the wire", () => {
    const thin = 0.8 * CALIBRATION_DENSITY;
    expect(read(wire, 0.02, thin, CALIBRATION_DENSITY) / 0.02).toBeCloseTo(1, 3);
    expect(read(vane, 0.02, thin, CALIBRATION_DENSITY) / 0.02).toBeCloseTo(1 / Math.sqrt(0.8), 3);
    expect(read(vortex, 0.02, thin, CALIBRATION_DENSITY) / 0.02).toBeCloseTo(1 / 0.8, 3);
  });

  it("a torque that closes the vane makes it read low, most where the spring is weakest", () => {
    const error = (flow: number) =>
      read(vane, flow, CALIBRATION_DENSITY, CALIBRATION_DENSITY, [{ cause: "vane-tilted", size: 0.08 }]) / flow - 1;
    expect(error(3e-3)).toBeLessThan(-0.05);
    expect(error(0.1)).toBeLessThan(-0.03);
    expect(error(3e-3)).toBeLessThan(error(0.1));
  });

  it("cannot be fouled or tilted where the meter has nothing to foul or tilt", () => {
    expect(() => read(vortex, 0.02, 1.2, 1.2, [{ cause: "meter-fouled", size: -0.1 }])).toThrow("heated");
    expect(() => read(wire, 0.02, 1.2, 1.2, [{ cause: "vane-tilted", size: 0.1 }])).toThrow("vane");
  });
});
