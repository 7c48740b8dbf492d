/** Bench points as JSON, format "airtally-bench-points/1": signal and flow as measured, in the units named once. */
import { z } from "zod";
import { quantity } from "../../quantity-schema.ts";

const note = z.string().optional().meta({ description: "free text; not read" });

export const BENCH_POINTS_SCHEMA = z
  .strictObject({
    format: z.literal("airtally-bench-points/1"),
    note,
    signalUnit: z.enum(["V", "Hz", "ms", "ratio"]).meta({ description: "ratio: of the reference voltage" }),
    flowUnit: z.enum(["g/s", "kg/h", "L/s", "m3/h"]).meta({ description: "volume for a vortex meter" }),
    at: z
      .strictObject({
        note,
        pressure: quantity("pressure", "101.325 kPa", { low: 20_000, high: 400_000, unit: "kPa" }),
        temperature: quantity("temperature", "20 degC", { low: 213.15, high: 373.15, unit: "degC" }),
      })
      .optional()
      .meta({ description: "air at the meter while it was measured" }),
    points: z
      .array(
        z.strictObject({
          note,
          signal: z.number(),
          flow: z.number(),
          sd: z
            .number()
            .gt(0)
            .optional()
            .meta({ description: "standard uncertainty of the flow; for all points or none" }),
          signalSd: z.number().min(0).optional().meta({ description: "standard uncertainty of the signal" }),
        }),
      )
      .min(3)
      .max(10_000),
  })
  .meta({
    title: "Airtally bench points",
    description: "Points of signal and flow that a meter's curve is fitted to.",
  });
