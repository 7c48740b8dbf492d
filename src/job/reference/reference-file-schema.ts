/** The reference file: what a healthy job has taught of its kind of engine. Written by the tool; the spreads may be edited. */
import { z } from "zod";

const numbers = z.array(z.number());
const number = z.number().nullable();

const value = z.strictObject({
  quantity: z.string().meta({ description: "docs/reference-file.md lists them" }),
  speed_rpm: z.number().positive(),
  pressure_kPa: z.number().positive().meta({ description: "manifold" }),
  exhaustPressure_kPa: z.number().positive(),
  flow_g_per_s: z.number().positive(),
  intakeTemperature_degC: z.number().gt(-100).lt(300),
  effectivePulse_ms: z.number().positive(),
  expected: number.meta({ description: "breathing: ln efficiency expected before looking; null for the others" }),
  mean: z.number().meta({ description: "ln departure from what was expected" }),
});

export const REFERENCE_FILE_SCHEMA = z
  .strictObject({
    format: z.literal("airtally-reference/1"),
    note: z.string().optional().meta({ description: "free text; not read" }),
    toolVersion: z.string(),
    healthyProbability: z.number().min(0).max(1),
    engine: z
      .strictObject({
        displacement_cm3: z.number().positive(),
        cylinders: z.int().positive(),
        banks: z.union([z.literal(1), z.literal(2)]),
        compressionRatio: number,
        fuel: z.union([z.string(), z.number()]).meta({ description: "its name, or its stoichiometric ratio" }),
        ignition: z.string(),
        induction: z.string().nullable(),
        injection: z.string().nullable(),
        valveTiming: z.string().nullable(),
        metering: z.string(),
        meters: z.array(z.string()).meta({ description: "kinds" }),
      })
      .meta({ description: "the kind of engine; another kind is refused" }),
    recordings: z.array(z.strictObject({ name: z.string(), sha256: z.string() })),
    spreads: z
      .array(
        z.strictObject({
          unknown: z.string(),
          spread: z.number().positive(),
          unit: z.string(),
          reason: z.string(),
        }),
      )
      .meta({
        description:
          "how far one healthy engine lies from what its kind has in common, one standard deviation; may be edited",
      }),
    values: z.array(value).min(1).max(120),
    covariance: numbers.meta({ description: "of the values: lower triangle, row by row" }),
    before: numbers.meta({
      description: "their covariance before looking: the recording itself said what lies between the two",
    }),
  })
  .meta({ title: "Airtally reference file", description: "What a healthy job tells the next engine of its kind." });

export type ReferenceFile = z.infer<typeof REFERENCE_FILE_SCHEMA>;
