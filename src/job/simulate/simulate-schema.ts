/** The answers of `airtally simulate`, format "airtally-simulate/1"; docs/schema/simulate.schema.json is made from it. */
import { z } from "zod";

const known = z.number().nullable();
const head = {
  format: z.literal("airtally-simulate/1"),
  toolVersion: z.string(),
  notice: z.string().meta({ description: "says that everything here is invented" }),
};

const step = z.strictObject({
  what: z.string(),
  start_s: z.number(),
  end_s: z.number(),
  speed_rpm: z.number(),
  manifoldPressure_kPa: z.number(),
  air_g_per_s: z.number().meta({ description: "dry fresh air into the cylinders" }),
  meterReading_g_per_s: known.meta({ description: "as the engine computer reads it; null without a meter" }),
  leaks_g_per_s: z.number().meta({ description: "through planted leaks; in is positive" }),
  lambda: known.meta({ description: "of what burns; null where the engine is still" }),
  trims: known.meta({ description: "short and long trim together, as a fraction; null where the engine is still" }),
});

const recording = z.strictObject({
  ...head,
  kind: z.literal("recording"),
  headline: z.string(),
  family: z.string(),
  engine: z.strictObject({
    note: z.string(),
    number: z.int(),
    tolerances: z.number().meta({ description: "share of the healthy tolerances; 0 is an engine as drawn" }),
    lambdaProbe: z.enum(["none", "narrow", "wide"]),
  }),
  faults: z
    .array(
      z.strictObject({
        cause: z.string(),
        size: z.number(),
        unit: z.string(),
        sizeMeans: z.string(),
        pivot: z.enum(["ambient", "zero"]).nullable(),
        bank: z.int().nullable().meta({ description: "of two, the one that has the fault alone" }),
        errorAt30: z.number().nullable().meta({ description: "of a wrong curve, at 30 % of the largest flow" }),
        loss: z.number().nullable().meta({ description: "of a short supply: share missing at the largest flow" }),
      }),
    )
    .meta({ description: "planted: the truth; empty for a healthy engine" }),
  protocol: z.string(),
  duration_s: z.number(),
  ambient: z.strictObject({
    pressure_kPa: z.number(),
    temperature_degC: z.number(),
    relativeHumidity: z.number(),
  }),
  recorder: z.strictObject({
    name: z.string(),
    rate_per_s: z.number(),
    channels: z.array(z.string()),
  }),
  seed: z.int(),
  steps: z.array(step).meta({ description: "the truth, in means over each step of the protocol" }),
});

const choices = z.strictObject({
  ...head,
  kind: z.literal("choices"),
  families: z.array(
    z.strictObject({
      family: z.string(),
      engine: z.string(),
      dosedBy: z.enum(["meter", "pressure", "both", "pedal"]),
      meter: z.enum(["vane", "vortex", "hot-wire", "hot-film"]).nullable(),
    }),
  ),
  protocols: z.array(
    z.strictObject({
      protocol: z.string(),
      does: z.string(),
      least_s: z.number(),
      usual_s: z.number().meta({ description: "the same as the least where nothing fills a longer duration" }),
    }),
  ),
  faults: z.array(
    z.strictObject({
      cause: z.string(),
      is: z.string(),
      sizeMeans: z.string(),
      unit: z.string().meta({ description: "1 is a plain number" }),
      low: z.number(),
      high: z.number(),
      needs: z.string().nullable(),
      example: z.string(),
    }),
  ),
  recorders: z.array(z.strictObject({ recorder: z.string(), does: z.string() })),
});

export const SIMULATE_SCHEMA = z.discriminatedUnion("kind", [recording, choices]).meta({
  title: "Airtally simulate answer",
  description: "What was simulated, with the truth; or what can be. Units stand in the names.",
});

export type SimulatedSheet = z.infer<typeof recording>;
export type SimulateChoices = z.infer<typeof choices>;
export type SimulatedStep = z.infer<typeof step>;
