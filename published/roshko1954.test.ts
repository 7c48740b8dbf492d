/** Strouhal numbers of a cylinder and pulses of a pipe meter against Roshko (1954) and geometry. */
import { describe, expect, it } from "vitest";
import {
  cylinderStrouhal,
  freeAreaShare,
  meterFlow,
  prepareMeter,
  vortexMassFlow,
  vortexPulsesPerVolume,
} from "../src/meters/index.ts";
import type * as strouhalModule from "../src/meters/vortex/strouhal.ts";
import { expected, input, record, recordsNamed } from "./check-records.ts";
import { expectDigits, expectInside, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "04-vortex";

function check(module: Pick<typeof strouhalModule, "cylinderStrouhal">): void {
  for (const row of recordsNamed(TOPIC, "roshko.St.")) {
    expectRecord(module.cylinderStrouhal(input(row, "Re")).strouhal, row);
  }
}

function checkPulses(module: Pick<typeof strouhalModule, "vortexPulsesPerVolume">): void {
  for (const row of recordsNamed(TOPIC, "K.")) {
    const bore = input(row, "D_m");
    const bodyWidth = input(row, "d_m");
    const freeArea = 1 - (1.25 * bodyWidth) / bore;
    expectRecord(module.vortexPulsesPerVolume({ strouhal: input(row, "St"), bore, bodyWidth, freeArea }), row);
  }
}

describe("roshko1954", () => {
  it("gives the Strouhal number from Re 50 to 2000", () => check({ cylinderStrouhal }));

  it("gives the two formulas as published", () => {
    for (const [id, reynolds] of [
      ["roshko.form.lo", 100],
      ["roshko.form.hi", 1000],
    ] as const) {
      const row = record(TOPIC, id);
      // Ro = St Re: the published constants are rounded to two digits
      const roshko = expected(row, "a") * reynolds - expected(row, "b");
      expectDigits(cylinderStrouhal(reynolds).strouhal * reynolds, roshko, 3);
    }
  });

  it("stays within the plateau of 0.2 that holds beyond, and says that it is outside", () => {
    const row = record(TOPIC, "St.plateau");
    const held = cylinderStrouhal(1e5);
    expectInside(held.strouhal, [expected(row) - 0.015, expected(row) + 0.015]);
    expect(held.inside).toBe(false);
  });

  it("gives the pulses per cubic metre of a bar in a pipe", () => checkPulses({ vortexPulsesPerVolume }));

  it("gives the free area of a bar across a pipe", () => {
    expectDigits(freeAreaShare(0.0135 / 0.05), 0.6604490923782825, 14);
    expectDigits(freeAreaShare(0.015 / 0.06), 0.6850376424742926, 14);
  });

  it("makes the mass of a vortex meter follow density, whichever way it is computed", () => {
    const pulsesPerVolume = vortexPulsesPerVolume({ strouhal: 0.2, bore: 0.05, bodyWidth: 0.0135, freeArea: 0.66 });
    const points = [10, 500, 2000].map((f) => [f, f / pulsesPerVolume] as const);
    const prepared = prepareMeter({
      id: "meter",
      kind: "vortex",
      bank: null,
      bore: null,
      reference: null,
      curve: { signalUnit: "Hz", flow: "volume", points, at: null },
    });
    if (!prepared.ok) throw new Error(prepared.message);
    const air = { pressure: 90_000, temperature: 303.15, humidityRatio: 0 };
    const density = 90_000 / (287.04749 * 303.15);
    const ours = meterFlow(prepared.value, 700, air).massFlow;
    expectDigits(ours, vortexMassFlow({ pulsesPerVolume }, 700, density), 7);
  });

  it("fails once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/meters/vortex/strouhal.ts", "(1 - 21.2", 0.05, check);
    await expectCoefficientMatters("src/meters/vortex/strouhal.ts", "return (4", 1e-8, checkPulses);
  });
});
