/**
 * The found file, format "airtally-found/1": workshop checks made on the engine, and what they showed. Made from the table of
 * checks, so that every check asks for exactly its own outcomes or readings. The JSON Schema in docs/schema is generated from this.
 */
import { z } from "zod";
import { type AskedNumber, CHECKS, type CheckEntry } from "../../findings/index.ts";
import { quantity } from "../quantity-schema.ts";

const note = z.string().optional().meta({ description: "free text; not read" });

const aside = {
  bank: z
    .union([z.literal(1), z.literal(2)])
    .optional()
    .meta({ description: "of two banks, the one it was made on; left out: the engine as a whole" }),
  note,
  by: z.string().optional().meta({ description: "who made it; not read" }),
  when: z.string().optional().meta({ description: "when; not read" }),
};

/** One entry of the file, for one check. */
export function entrySchema(check: CheckEntry) {
  const id = z.literal(check.id).meta({ description: check.title });
  if (check.kind === "words") {
    const words = check.outcomes.map((o) => `${o.id}: ${o.words}`).join("; ");
    const result = z.enum(check.outcomes.map((o) => o.id) as [string, ...string[]]).meta({ description: words });
    return z.strictObject({ check: id, result, ...aside });
  }
  const asked = Object.fromEntries(check.asks.map((ask) => [ask.key, askedSchema(ask)]));
  return z.strictObject({ check: id, ...asked, ...aside });
}

function askedSchema({ dimension, words, example }: AskedNumber) {
  if (dimension === "number")
    return z
      .number()
      .gt(0)
      .lt(10)
      .meta({ description: words, examples: [Number(example)] });
  const range = RANGES[dimension];
  return quantity(dimension, example, range).meta({
    description: `${words}, such as "${example}"`,
    examples: [example],
  });
}

/** what can be; a slip of the unit falls outside */
const RANGES = {
  pressure: { low: 0, high: 300e6, unit: "kPa" },
  temperature: { low: 200, high: 450, unit: "degC" },
  ratio: { low: 0, high: 1, unit: "%" },
} as const;

export const FOUND_FORMAT = "airtally-found/1";
export const MOST_FOUND = 200;

const entries = CHECKS.map(entrySchema) as unknown as [z.ZodObject, ...z.ZodObject[]];

export const FOUND_FILE_SCHEMA = z
  .strictObject({
    format: z.literal(FOUND_FORMAT),
    note,
    found: z.array(z.union(entries)).max(MOST_FOUND).meta({ description: "each check once, or once a bank" }),
  })
  .meta({
    title: "Airtally found file",
    description: "Workshop checks made on one engine, and what they showed; docs/found-file.md describes every check.",
  });

/** The file around its entries, which are read each against the schema of its own check. */
export const FOUND_FRAME_SCHEMA = z.strictObject({
  format: z.literal(FOUND_FORMAT),
  note,
  found: z.array(z.looseObject({ check: z.string() })).max(MOST_FOUND),
});
