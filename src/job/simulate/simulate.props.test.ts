import fc from "fast-check";
import { expect, it } from "vitest";
import { CAUSES, expectSensible, fitsSchema } from "../../../test/whole-path/sensible-simulations.ts";
import { FAMILIES, FAMILY_DESIGNS } from "../../model-engine/index.ts";
import { simulateChoices } from "./choices.ts";
import { PROTOCOL_NAMES } from "./protocols.ts";
import { readFaults } from "./read-faults.ts";
import { simulate } from "./simulate.ts";
import type { SimulateOptions } from "./simulate-options.ts";

it("gives a value or a typed reason for any sensible options, the same bytes twice, and fits the published schema", () => {
  expectSensible(10);
});

it("gives a reason and never a crash for texts of any kind", () => {
  const text = fc.oneof(fc.string(), fc.constantFrom("1e999 s", "NaN", "-0", "__proto__", "constructor", "1 kPa", ""));
  const keys = Object.keys(simulateTexts());
  fc.assert(
    fc.property(fc.constantFrom(...keys), text, (key, value) => {
      const options = {
        protocol: "idle",
        duration: "66 s",
        [key]: key === "faults" || key === "stuck" ? [value] : value,
      };
      const result = simulate(options, "0");
      if (!result.ok) expect(result.remedy.length).toBeGreaterThan(5);
    }),
    { numRuns: 200 },
  );
});

/** Every key of the options, by the compiler's leave. */
function simulateTexts(): Required<{ [key in keyof SimulateOptions]: true }> {
  return {
    family: true,
    engineNumber: true,
    tolerances: true,
    probe: true,
    faults: true,
    protocol: true,
    duration: true,
    altitude: true,
    barometer: true,
    temperature: true,
    humidity: true,
    recorder: true,
    rate: true,
    rows: true,
    names: true,
    units: true,
    delimiter: true,
    decimalMark: true,
    time: true,
    lineEnd: true,
    dropouts: true,
    dropoutLength: true,
    stuck: true,
    seed: true,
  };
}

it("lists every family, protocol and fault; its example of each fault can be planted in some family", () => {
  const choices = simulateChoices("0");
  expect(fitsSchema(JSON.parse(JSON.stringify(choices))), JSON.stringify(fitsSchema.errors?.[0])).toBe(true);
  expect(choices.families.map((row) => row.family)).toEqual(FAMILIES);
  expect(choices.protocols.map((row) => row.protocol)).toEqual(PROTOCOL_NAMES);
  expect(choices.faults.map((row) => row.cause)).toEqual(CAUSES);
  for (const { cause, example, unit } of choices.faults) {
    if (unit !== "1") expect(example, cause).toContain(` ${unit}`);
    const taken = FAMILIES.some((family) => readFaults([`${cause}=${example}`], FAMILY_DESIGNS[family]).ok);
    expect(taken, cause).toBe(true);
  }
});
