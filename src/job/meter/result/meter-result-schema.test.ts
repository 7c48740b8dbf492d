import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { meterAmbient } from "../ambient.ts";
import { meterBench } from "../bench.ts";
import { BENCH_POINTS_SCHEMA } from "../bench-input/bench-points-schema.ts";
import { BENCH_SHEET_SCHEMA } from "../bench-input/bench-sheet-schema.ts";
import { meterConvert } from "../convert.ts";
import { meterCurve } from "../curve.ts";
import { meterFit } from "../fit.ts";
import { benchSheet, CURVE_CSV, kingPointsCsv } from "../test-support/examples.ts";
import { METER_SCHEMA } from "./meter-result-schema.ts";

const file = { name: "f", text: CURVE_CSV };
const toolVersion = "0";

function answers() {
  const results = {
    convert: meterConvert({
      file,
      kind: "vane",
      signals: ["2", "9"],
      flows: ["30 g/s"],
      air: {},
      uncertainty: { curveError: "1 %" },
      toolVersion,
    }),
    curve: meterCurve({ file, kind: "vane", air: {}, rows: 5, toolVersion }),
    ambient: meterAmbient({ file: null, kind: "vane", options: { flapTorque: "90 %", tilts: "-40 deg" }, toolVersion }),
    fit: meterFit({ file: { name: "f", text: kingPointsCsv() }, toolVersion }),
    bench: meterBench({ file: { name: "f", text: JSON.stringify(benchSheet()) }, toolVersion }),
  };
  return Object.entries(results).map(([kind, result]) => {
    if (!result.ok) throw new Error(result.message);
    const sheet = "sheet" in result.value ? result.value.sheet : result.value;
    return { kind, sheet: JSON.parse(JSON.stringify(sheet)) };
  });
}

// Checked by somebody else's validator, not by the library that wrote the schema.
describe("the published schemas", () => {
  const compiled = (schema: z.ZodType) =>
    new Ajv2020({ strict: false }).compile(z.toJSONSchema(schema, { io: "input" }));

  it("accept the answer of every sub-command as it is written to a file, and no other", () => {
    const valid = compiled(METER_SCHEMA);
    for (const { kind, sheet } of answers()) {
      expect(valid(sheet), `${kind}: ${JSON.stringify(valid.errors?.slice(0, 3))}`).toBe(true);
      expect(valid({ ...sheet, more: 1 })).toBe(false);
      expect(valid({ ...sheet, headline: undefined })).toBe(false);
    }
  });

  it("accept the bench files that the readers accept", () => {
    const sheet = compiled(BENCH_SHEET_SCHEMA);
    expect(sheet(benchSheet())).toBe(true);
    expect(sheet(benchSheet({ rows: [] }))).toBe(false);
    const points = compiled(BENCH_POINTS_SCHEMA);
    const three = [1, 2, 3].map((signal) => ({ signal, flow: signal ** 2 }));
    const file = { format: "airtally-bench-points/1", signalUnit: "V", flowUnit: "g/s", points: three };
    expect(points(file)).toBe(true);
    expect(points({ ...file, points: three.slice(1) })).toBe(false);
  });
});
