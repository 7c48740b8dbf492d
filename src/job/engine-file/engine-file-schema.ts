/**
 * The engine file, format "airtally-engine/1": what is known of the engine, in the user's words and units. Keys are fixed.
 * Unknown keys are refused, "note" is allowed anywhere. The JSON Schema in docs/schema is generated from this.
 */
import { z } from "zod";
import { quantity } from "../quantity-schema.ts";

const note = z.string().optional().meta({ description: "free text; not read" });
const fitted = z.enum(["none", "fitted"]);

const curve = z.strictObject({
  note,
  signalUnit: z.enum(["V", "Hz", "ms", "ratio"]).meta({ description: "ratio: of the reference voltage" }),
  flowUnit: z.enum(["g/s", "kg/h", "L/s", "m3/h"]).meta({ description: "volume (L/s, m3/h) for a vortex meter" }),
  at: z
    .strictObject({
      note,
      pressure: quantity("pressure", "101.325 kPa"),
      temperature: quantity("temperature", "20 degC"),
    })
    .optional()
    .meta({ description: "the air for which a vane's mass column, or any volume column, holds" }),
  points: z
    .array(z.tuple([z.number(), z.number()]))
    .min(2)
    .max(10_000)
    .meta({ description: "[signal, flow], in the units above" }),
});

const meter = z.strictObject({
  note,
  id: z.enum(["meter", "meter-2"]),
  kind: z.enum(["vane", "vortex", "hot-wire", "hot-film"]),
  bank: z.union([z.literal(1), z.literal(2)]).optional(),
  bore: quantity("length", "70 mm").optional(),
  reference: quantity("voltage", "5 V").optional(),
  curve: curve.optional(),
});

export const ENGINE_FILE_SCHEMA = z
  .strictObject({
    format: z.literal("airtally-engine/1"),
    note,
    displacement: quantity("volume", "1998 cm3").meta({ description: "of all cylinders" }),
    cylinders: z.int().min(1).max(24),
    strokes: z
      .int()
      .meta({ description: "4; two-stroke engines are refused: what is trapped can't be told from what flows" }),
    banks: z.union([z.literal(1), z.literal(2)]).optional(),
    compressionRatio: z.number().gt(1).lt(40).optional(),
    valveTiming: z.enum(["fixed", "variable"]).optional(),
    fuel: z.union([
      z.enum(["petrol", "e10", "e85", "ethanol", "methanol", "lpg", "cng", "diesel"]),
      z.strictObject({ note, stoichiometricAirFuelRatio: z.number().gt(1).lt(40) }),
    ]),
    ignition: z.enum(["spark", "compression"]).optional(),
    induction: z.enum(["natural", "boosted"]).optional(),
    injection: z.enum(["port", "direct"]).optional(),
    metering: z
      .enum(["meter", "pressure", "both", "pedal", "unknown"])
      .meta({ description: "what the engine computer doses fuel by" }),
    meters: z.array(meter).max(2).optional(),
    manifoldSensor: z
      .strictObject({
        note,
        reads: z.enum(["absolute", "gauge"]).optional(),
        reference: quantity("voltage", "5 V").optional(),
        points: z
          .array(z.tuple([quantity("voltage", "0.5 V", "any"), quantity("pressure", "20 kPa", "any")]))
          .min(2)
          .optional(),
      })
      .optional(),
    volumetricEfficiency: z
      .strictObject({ note, value: z.number().gt(0.1).lt(2), sd: z.number().gt(0).lt(0.5).optional() })
      .optional(),
    injectors: z
      .strictObject({
        note,
        flow: quantity("volumeFlow", "240 cm3/min").optional().meta({ description: "of one injector" }),
        atPressure: quantity("pressure", "300 kPa").optional(),
        deadTime: quantity("time", "0.9 ms").optional(),
        pressureReference: z.enum(["manifold", "ambient"]).optional(),
        pulsesPerCycle: z.number().gt(0).max(20).optional(),
      })
      .optional(),
    lambdaProbe: z.enum(["none", "narrow", "wide"]).optional().meta({ description: "the control probe" }),
    independentProbe: z.enum(["none", "narrow", "wide"]).optional(),
    site: z
      .strictObject({
        note,
        barometer: quantity("pressure", "98.9 kPa").optional(),
        outside: quantity("temperature", "12 degC").optional(),
      })
      .optional(),
    trimLimits: quantity("ratio", "25 %").optional().meta({ description: "of each trim" }),
    trims: z.enum(["multiplied", "added"]).optional(),
    egr: fitted.optional(),
    egrControl: z.enum(["meter", "position", "unknown"]).optional(),
    purge: fitted.optional(),
    secondaryAir: fitted.optional(),
    intakeTemperatureAt: z.enum(["meter", "manifold", "after-cooler"]).optional(),
    manifoldVolume: quantity("volume", "3.0 L").optional(),
    chargeVolume: quantity("volume", "5 L").optional(),
    throttleBore: quantity("length", "60 mm").optional(),
  })
  .meta({
    title: "Airtally engine file",
    description: "What is known of one engine. What is left out gets a wider assumption.",
  });

export type EngineFile = z.infer<typeof ENGINE_FILE_SCHEMA>;
