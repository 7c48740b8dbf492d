import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { CHECKS } from "../../findings/index.ts";
import { jsonSchemas } from "../schemas.ts";
import { parseFoundFile } from "./parse-found-file.ts";

const file = (...found: unknown[]) => JSON.stringify({ format: "airtally-found/1", found });
const SMOKE = { check: "smoke-test", result: "smoke-at-manifold", note: "at the servo hose", by: "an invented hand" };
const KEY_ON = { check: "key-on-pressure", reading: "103.5 kPa", barometer: "98.9 kPa" };

/** every check of the table with its first outcome, or with the examples of what it asks */
const WHOLE = CHECKS.map((check) =>
  check.kind === "words"
    ? { check: check.id, result: check.outcomes[0]!.id }
    : {
        check: check.id,
        ...Object.fromEntries(
          check.asks.map((ask) => [ask.key, ask.dimension === "number" ? Number(ask.example) : ask.example]),
        ),
      },
);

function refused(text: string, banks: 1 | 2 = 1): string {
  const parsed = parseFoundFile(text, banks);
  if (parsed.ok) throw new Error("was not refused");
  return `${parsed.reason}: ${parsed.message} ${parsed.remedy}`;
}

describe("a found file", () => {
  it("gives named outcomes, and numbers in SI", () => {
    expect(parseFoundFile(file(SMOKE, KEY_ON), 1)).toEqual({
      ok: true,
      value: [
        { check: "smoke-test", bank: null, outcome: "smoke-at-manifold", numbers: {} },
        { check: "key-on-pressure", bank: null, outcome: null, numbers: { reading: 103_500, barometer: 98_900 } },
      ],
    });
  });

  it("may hold every check of the table, and the published schema agrees", () => {
    const parsed = parseFoundFile(file(...WHOLE), 1);
    expect(parsed.ok && parsed.value.length).toBe(CHECKS.length);
    const valid = new Ajv2020({ strict: false }).compile(JSON.parse(jsonSchemas()["found.schema.json"]!));
    expect(valid(JSON.parse(file(...WHOLE)))).toBe(true);
    expect(valid(JSON.parse(file({ ...SMOKE, result: "smoke-everywhere" })))).toBe(false);
    expect(valid(JSON.parse(file({ ...KEY_ON, result: "high" })))).toBe(false);
  });

  it("may hold one check for each of two banks", () => {
    const leak = (bank: number) => ({ check: "exhaust-leak-test", result: "tight", bank });
    expect(parseFoundFile(file(leak(1), leak(2)), 2).ok).toBe(true);
    expect(refused(file(leak(1)))).toMatch(/one bank.*"banks": 2/);
    expect(refused(file(leak(1), leak(1)), 2)).toMatch(/^found-twice: .*entry 2 .*entry 1/);
  });
});

describe("a slip is refused with its place and the nearest known word", () => {
  it.each([
    ["no JSON", '{ "format": ', /^found-not-json: The found file is not JSON/],
    ["another format", file().replace("found/1", "engine/1"), /^found-not-valid: .*format/],
    ["an unknown key of the file", file().replace('"found"', '"fund"'), /"fund".*Did you mean "found"/],
    [
      "an unknown check",
      file(KEY_ON, { check: "smoke-tets", result: "tight" }),
      /entry 2 .*"smoke-tets".*Did you mean "smoke-test"/,
    ],
    [
      "an unknown result",
      file({ ...SMOKE, result: "smoke-at-manifolt" }),
      /entry 1 .*Did you mean "smoke-at-manifold"\? Possible there: tight/,
    ],
    [
      "an unknown key of a check",
      file({ ...KEY_ON, barometr: "99 kPa" }),
      /entry 1 .*"key-on-pressure".*"barometr".*Did you mean "barometer"/,
    ],
    [
      "a reading left out",
      file({ check: "key-on-pressure", reading: "99 kPa" }),
      /entry 1 .*lacks "barometer".*found-file\.md/,
    ],
    ["a result where a reading is asked", file({ ...KEY_ON, result: "high" }), /unknown key "result"/],
    ["a wrong unit", file({ ...KEY_ON, reading: "99 degC" }), /at reading.*degC.*pressure/],
    ["a number without a unit", file({ ...KEY_ON, reading: "99" }), /has no unit/],
    [
      "an impossible temperature",
      file({ check: "intake-temperature", reading: "900 degC", thermometer: "20 degC" }),
      /out of range/,
    ],
    ["a check made twice", file(SMOKE, SMOKE), /^found-twice: .*no second witness/],
    ["an entry that is none", file("smoke-test"), /found-not-valid/],
  ])("%s", (_, text, expected) => {
    expect(refused(text)).toMatch(expected);
  });
});
