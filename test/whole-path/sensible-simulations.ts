/** Options as a person might give them, drawn at random, and what must hold of every one. */
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { expect } from "vitest";
import { jsonSchemas } from "../../src/job/schemas.ts";
import { simulate } from "../../src/job/simulate/simulate.ts";
import type { SimulateOptions } from "../../src/job/simulate/simulate-options.ts";
import { FAMILIES, FAULT_LIMITS, PLANTABLE, type PlantableCause } from "../../src/model-engine/index.ts";

export const CAUSES = Object.keys(PLANTABLE) as PlantableCause[];
/** somebody else's validator of the published schema */
export const fitsSchema = new Ajv2020({ strict: false }).compile(JSON.parse(jsonSchemas()["simulate.schema.json"]!));

const fault = fc.tuple(fc.constantFrom(...CAUSES), fc.double({ min: 0, max: 1, noNaN: true })).map(([cause, share]) => {
  const [low, high] = FAULT_LIMITS[cause];
  return `${cause}=${(low + share * (high - low)).toFixed(3)}`;
});
const number = (low: number, high: number, unit: string) =>
  fc.double({ min: low, max: high, noNaN: true }).map((x) => `${x.toFixed(2)} ${unit}`);
const word = (...words: readonly string[]) => fc.constantFrom(...words);

/** Most are well formed, so that most calls reach the engine. */
const sensible = (protocols: readonly string[]): fc.Arbitrary<SimulateOptions> =>
  fc.record(
    {
      family: word(...FAMILIES),
      engineNumber: fc.nat().map(String),
      seed: fc.nat().map(String),
      tolerances: word("0", "0.5", "1"),
      probe: word("narrow", "wide"),
      faults: fc.array(fault, { maxLength: 3 }),
      protocol: word(...protocols),
      duration: word("66 s", "80 s", "300 s"),
      barometer: number(74, 104, "kPa"),
      temperature: number(-10, 40, "degC"),
      humidity: number(0, 100, "%"),
      recorder: word("tester", "logger"),
      rate: word("1", "5", "100"),
      rows: word("each-reading", "each-round", "sparse"),
      names: word("long", "short"),
      units: word("brackets", "parentheses", "row", "none"),
      delimiter: word("comma", "semicolon", "tab"),
      decimalMark: word("point", "comma"),
      time: word("seconds", "milliseconds", "clock"),
      lineEnd: word("lf", "crlf"),
      dropouts: word("0", "3"),
      dropoutLength: word("0.5 s", "40 s"),
      stuck: fc.array(word("MAP from 10 s for 20 s", "engine speed from 0 s for 1 min", "IAT from 500 s for 1 s")),
    },
    { requiredKeys: ["protocol", "duration"] },
  );

/** The short protocols alone, or any. */
export function expectSensible(numRuns: number, protocols: readonly string[] = ["idle", "road"]): void {
  let runs = 0;
  fc.assert(
    fc.property(sensible(protocols), (options) => {
      const first = simulate(options, "0");
      expect(simulate(options, "0")).toEqual(first);
      if (!first.ok) {
        expect([first.reason, first.message, first.remedy].every((text) => text.length > 5)).toBe(true);
        return;
      }
      runs += 1;
      const { recording, truth, sheet } = first.value;
      expect(`${recording}${truth}`).not.toMatch(/NaN|Infinity|undefined/);
      expect(fitsSchema(JSON.parse(JSON.stringify(sheet))), JSON.stringify(fitsSchema.errors?.[0])).toBe(true);
    }),
    { numRuns },
  );
  expect(runs).toBeGreaterThan(numRuns / 8);
}
