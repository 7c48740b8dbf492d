/** The published JSON Schemas, by file name. */
import { z } from "zod";
import { ENGINE_FILE_SCHEMA } from "./engine-file/engine-file-schema.ts";
import { RESULT_SCHEMA } from "./result-schema.ts";

export function jsonSchemas(): { readonly [file: string]: string } {
  const text = (schema: z.ZodType) => `${JSON.stringify(z.toJSONSchema(schema, { io: "input" }), null, 2)}\n`;
  return { "engine.schema.json": text(ENGINE_FILE_SCHEMA), "result.schema.json": text(RESULT_SCHEMA) };
}
