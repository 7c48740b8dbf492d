/** Isentropic flow against NACA Report 1135 and a worked example of a nozzle. */
import { describe, it } from "vitest";
import {
  criticalPressureRatio,
  isentropicAreaRatio,
  isentropicRatios,
  machNumberOfPressureRatio,
  speedOfSound,
} from "../src/gas/index.ts";
import type * as isentropic from "../src/gas/isentropic.ts";
import { input, record, recordsNamed } from "./check-records.ts";
import { expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "02-compressible-restriction";

function check(module: Pick<typeof isentropic, "isentropicRatios" | "isentropicAreaRatio">): void {
  for (const row of recordsNamed(TOPIC, "isentropic.M")) {
    const mach = input(row, "M");
    const ratios = module.isentropicRatios(mach, input(row, "gamma"));
    // The printed ratios carry fewer digits at low Mach numbers: 0.993, 0.995, 0.998 are rounded to the third place.
    const digits = mach === 0.1 ? { ...row, tolerance: { type: "absolute", value: 5.1e-4 } as const } : row;
    expectRecord(ratios.pressure, digits, { part: "p_p0" });
    expectRecord(ratios.density, digits, { part: "rho_rho0" });
    expectRecord(ratios.temperature, digits, { part: "T_T0" });
    expectRecord(module.isentropicAreaRatio(mach, input(row, "gamma")), row, { part: "A_Astar" });
  }
}

describe("naca1135", () => {
  it("gives the subsonic and supersonic tables", () => check({ isentropicRatios, isentropicAreaRatio }));

  it("gives the Mach number and throat state of a published nozzle example", () => {
    const row = record(TOPIC, "balmer.16.6");
    const gamma = input(row, "k");
    expectRecord(machNumberOfPressureRatio(input(row, "p_MPa") / input(row, "p0_MPa"), gamma), row, { part: "M" });
    expectRecord(criticalPressureRatio(gamma) * input(row, "p0_MPa"), row, { part: "p_throat_MPa" });
    const throat = isentropicRatios(1, gamma).temperature * input(row, "T0_K") - 273.15;
    expectRecord(throat, row, { part: "T_throat_degC" });
  });

  it("gives the speed of sound", () => {
    for (const row of recordsNamed("11-gas-dynamics", "sound.")) {
      expectRecord(speedOfSound(input(row, "T_K"), input(row, "gamma"), input(row, "R")), row);
    }
  });

  it("fails once a coefficient moves", async () => {
    await expectCoefficientMatters<typeof isentropic>("src/gas/isentropic.ts", "(gamma - 1) / 2", 1e-3, check);
  });
});
