/** The visit file: which recordings belong to the job, what was around each, and of which visit it is. Keys are fixed. */
import { z } from "zod";
import { ZERO_CELSIUS } from "../../quantities/index.ts";
import { quantity } from "../quantity-schema.ts";

const note = z.string().optional().meta({ description: "free text; not read" });

export const VISIT_FILE_SCHEMA = z
  .strictObject({
    note,
    recordings: z
      .array(
        z.strictObject({
          note,
          file: z.string().min(1).meta({ description: "the recording, seen from the folder of this file" }),
          barometer: quantity("pressure", "98.9 kPa", { low: 40e3, high: 115e3, unit: "kPa" })
            .optional()
            .meta({ description: "true pressure of that place and day, not one reduced to sea level" }),
          outside: quantity("temperature", "12 degC", {
            low: ZERO_CELSIUS - 60,
            high: ZERO_CELSIUS + 60,
            unit: "degC",
          }).optional(),
          visit: z
            .string()
            .trim()
            .min(1)
            .max(40)
            .optional()
            .meta({
              description: "of which visit it is; differently named visits are weighed apart and compared",
              examples: ["before"],
            }),
        }),
      )
      .min(1),
  })
  .meta({
    title: "Airtally visit file",
    description:
      "The recordings of one job, each with what was around it. What is left out is taken from the engine file.",
  });
