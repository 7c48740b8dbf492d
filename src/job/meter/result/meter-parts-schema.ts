/** Parts that the answers of `airtally meter` share. */
import { z } from "zod";

export const METER_KINDS = ["vane", "vortex", "hot-wire", "hot-film"] as const;
export const SIGNAL_UNITS = ["V", "Hz", "ms", "ratio"] as const;

const origin = z
  .enum(["stated", "engine file", "curve", "assumed"])
  .meta({ description: "stated with the call; the site of the engine file; the air of the curve; 20 degC or 1 atm" });

export const airSchema = z
  .strictObject({
    pressure_kPa: z.number(),
    temperature_degC: z.number(),
    relativeHumidity: z.number(),
    density_kg_per_m3: z.number(),
    pressureFrom: origin,
    temperatureFrom: origin,
  })
  .meta({ description: "air at the meter" });

export const curveAirSchema = z
  .strictObject({
    pressure_kPa: z.number(),
    temperature_degC: z.number(),
    assumed: z.boolean().meta({ description: "not stated by the curve although it matters: 20 degC and 1 atm taken" }),
  })
  .meta({ description: "air in which the curve was taken" });

export const signalUnitSchema = z.enum(SIGNAL_UNITS).meta({ description: "ratio: of the reference voltage" });
export const kindSchema = z.enum(METER_KINDS);

export const identitySchema = z.strictObject({
  file: z.string(),
  kind: kindSchema.nullable(),
  signalUnit: signalUnitSchema,
  measures: z.enum(["mass", "volume"]).meta({ description: "what the flow column of the curve holds" }),
  law: z.string(),
  signalFrom: z.number(),
  signalTo: z.number(),
  air: curveAirSchema,
});

export const factsSchema = z.strictObject({
  name: z.string(),
  senses: z.string(),
  blindTo: z.array(z.string()),
  weather: z.string().meta({ description: "what altitude, temperature and humidity do" }),
  orientation: z.string(),
  supply: z.string(),
  response: z.string(),
  fails: z.array(z.string()),
});

export const shareSchema = z.strictObject({
  name: z.string(),
  share: z.number().meta({ description: "of the variance" }),
});

export const engineFileCurveSchema = z
  .strictObject({
    signalUnit: signalUnitSchema,
    flowUnit: z.enum(["g/s", "L/s"]),
    at: z.strictObject({ pressure: z.string(), temperature: z.string() }).optional(),
    points: z.array(z.tuple([z.number(), z.number()]).readonly()),
  })
  .meta({ description: "the curve as the engine file takes it (meters, curve); within 0.1 % of the largest flow" });

const warning = z.strictObject({ code: z.string(), text: z.string() });

/** What every answer begins with. */
export function headOf<Kind extends string>(kind: Kind) {
  return {
    format: z.literal("airtally-meter/1"),
    kind: z.literal(kind),
    toolVersion: z.string(),
    headline: z.string().meta({ description: "one sentence: what comes out" }),
    warnings: z.array(warning),
  };
}
