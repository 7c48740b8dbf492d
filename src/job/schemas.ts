/** The published JSON Schemas, by file name. */
import { z } from "zod";
import { ASSUMPTIONS_SCHEMA } from "./assumptions/assumptions-schema.ts";
import { ENGINE_FILE_SCHEMA } from "./engine-file/engine-file-schema.ts";
import { FOUND_FILE_SCHEMA } from "./found-file/found-file-schema.ts";
import { BENCH_POINTS_SCHEMA } from "./meter/bench-input/bench-points-schema.ts";
import { BENCH_SHEET_SCHEMA } from "./meter/bench-input/bench-sheet-schema.ts";
import { METER_SCHEMA } from "./meter/result/meter-result-schema.ts";
import { REFERENCE_FILE_SCHEMA } from "./reference/reference-file-schema.ts";
import { RESULT_SCHEMA } from "./result-schema.ts";
import { SIMULATE_SCHEMA } from "./simulate/simulate-schema.ts";
import { RECORDING_CARD_SCHEMA } from "./standard-recording/recording-card-schema.ts";
import { VISIT_FILE_SCHEMA } from "./visit/visit-file-schema.ts";

export function jsonSchemas(): { readonly [file: string]: string } {
  const text = (schema: z.ZodType) => `${JSON.stringify(z.toJSONSchema(schema, { io: "input" }), null, 2)}\n`;
  return {
    "engine.schema.json": text(ENGINE_FILE_SCHEMA),
    "found.schema.json": text(FOUND_FILE_SCHEMA),
    "assumptions.schema.json": text(ASSUMPTIONS_SCHEMA),
    "reference.schema.json": text(REFERENCE_FILE_SCHEMA),
    "visit.schema.json": text(VISIT_FILE_SCHEMA),
    "card.schema.json": text(RECORDING_CARD_SCHEMA),
    "result.schema.json": text(RESULT_SCHEMA),
    "meter.schema.json": text(METER_SCHEMA),
    "simulate.schema.json": text(SIMULATE_SCHEMA),
    "bench-sheet.schema.json": text(BENCH_SHEET_SCHEMA),
    "bench-points.schema.json": text(BENCH_POINTS_SCHEMA),
  };
}
