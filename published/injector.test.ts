/** Injector flow and fuel densities against arithmetic of the incompressible orifice, EN 228 and EN 590. */
import { describe, it } from "vitest";
import { blendProperties, injectorFlow } from "../src/engine/index.ts";
import { findUnit, toSi } from "../src/quantities/index.ts";
import { expected, input, record, recordsNamed } from "./check-records.ts";
import { expectDigits, expectFailure, expectInside, expectRecord } from "./matched-digits.ts";

const TOPIC = "09-injector-and-fuel";

describe("heywood1988 section 7.3", () => {
  const check = (exponentSkew: number): void => {
    for (const row of recordsNamed(TOPIC, "inj.sqrt.")) {
      const flow = injectorFlow({
        referenceFlow: input(row, "q1_cc_min"),
        referencePressureDifference: input(row, "dp1_kPa") * 1000 * exponentSkew,
        pressureDifference: input(row, "dp2_kPa") * 1000,
      });
      expectRecord(flow, row);
    }
  };
  it("scales injector flow by the root of the pressure difference", () => check(1));
  it("fails once the reference pressure moves by ten tolerances", () => {
    for (const skew of [1 + 2e-8, 1 - 2e-8]) expectFailure(() => check(skew));
  });
});

describe("en228, en590", () => {
  it("hold the densities of the fuels", () => {
    expectInside(blendProperties({ petrol: 1 }).density, record(TOPIC, "en228.density").expected as [number, number]);
    expectInside(blendProperties({ diesel: 1 }).density, record(TOPIC, "en590.density").expected as [number, number]);
  });
});

describe("units of injector flow", () => {
  it("turn pounds an hour into volume by the density of the fuel", () => {
    const poundPerHour = findUnit("lb/h");
    const volumeUnit = findUnit("cm3/min");
    if (poundPerHour === undefined || volumeUnit === undefined) throw new Error("units.json has lb/h and cm3/min");
    for (const row of recordsNamed(TOPIC, "cc2lb.").filter((r) => "rho_g_cc" in r.inputs)) {
      const flow = toSi(1, poundPerHour) / (input(row, "rho_g_cc") * 1000) / toSi(1, volumeUnit);
      expectRecord(flow, row);
    }
    expectDigits(toSi(1, poundPerHour) / 720 / toSi(1, volumeUnit), expected(record(TOPIC, "cc2lb.trade")), 3);
  });
});
