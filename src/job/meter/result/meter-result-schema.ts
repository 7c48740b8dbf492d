/** The answers of `airtally meter`, format "airtally-meter/1"; docs/schema/meter.schema.json is made from it. */
import { z } from "zod";
import {
  airSchema,
  curveAirSchema,
  engineFileCurveSchema,
  factsSchema,
  headOf,
  identitySchema,
  kindSchema,
  shareSchema,
  signalUnitSchema,
} from "./meter-parts-schema.ts";

const number = z.number();
const known = z.number().nullable();

const drawnPoint = {
  signal: number,
  massFlow_g_per_s: number,
  low90_g_per_s: known,
  high90_g_per_s: known,
};
const drawing = z.array(z.strictObject(drawnPoint)).meta({ description: "the curve in this air, to be drawn" });

const converted = z.strictObject({
  signal: known,
  massFlow_g_per_s: known.meta({ description: "moist air" }),
  volumeFlow_L_per_s: known.meta({ description: "of the air at the meter" }),
  where: z.enum(["inside", "below", "above", "no-flow", "no-signal"]).meta({
    description: "the signal against the ends of the curve; beyond them the end tangent is followed",
  }),
  sd_g_per_s: known,
  low90_g_per_s: known,
  high90_g_per_s: known,
  budget: z.array(shareSchema).meta({ description: "largest first" }),
});

const convert = z.strictObject({
  ...headOf("convert"),
  meter: identitySchema,
  air: airSchema,
  signals: z.array(converted).meta({ description: "from signal to flow" }),
  flows: z.array(converted).meta({ description: "from flow back to signal" }),
  drawing,
});

const curve = z.strictObject({
  ...headOf("curve"),
  meter: identitySchema,
  air: airSchema,
  parameters: z
    .array(z.strictObject({ name: z.string(), value: number }))
    .meta({ description: "of the law, SI; empty for points" }),
  points: z
    .array(z.strictObject(drawnPoint))
    .meta({ description: "that the curve stands on, in the air named; empty for a law" }),
  rows: z.array(
    z.strictObject({
      ...drawnPoint,
      volumeFlow_L_per_s: number,
      slope_g_per_s: number.meta({ description: "for a unit of signal" }),
      sensitivity: known.meta({ description: "per cent of flow for one per cent of signal" }),
    }),
  ),
  drawing,
  facts: factsSchema.nullable(),
  engineFileCurve: engineFileCurveSchema,
});

const compensation = z.enum(["none", "temperature", "pressure", "temperature-and-pressure"]);
const reading = {
  readingOverTruth: known.meta({
    description: "mass read over true mass; null where the flap hangs open without flow",
  }),
  lambdaRatio: known.meta({ description: "lambda that comes of it over lambda meant, without closed-loop correction" }),
};

const ambientRow = z.strictObject({
  altitude_m: known,
  pressure_kPa: number,
  temperature_degC: number,
  relativeHumidity: number,
  readings: z.array(z.strictObject({ compensation, ...reading })),
});

const ambient = z.strictObject({
  ...headOf("ambient"),
  file: z.string().nullable(),
  meterKind: kindSchema,
  facts: factsSchema,
  curveAir: curveAirSchema,
  compensations: z.array(compensation).meta({ description: "what the engine computer corrects" }),
  altitude: z.array(ambientRow),
  heat: z.array(ambientRow),
  humidity: z.array(ambientRow),
  tilt: z
    .array(
      z.strictObject({
        torqueError: number.meta({ description: "closing torque added, over the full spring torque" }),
        tilt_deg: known,
        readings: z.array(z.strictObject({ opening: number, ...reading })),
      }),
    )
    .meta({ description: "empty for a meter without a flap" }),
});

const fit = z.strictObject({
  ...headOf("fit"),
  file: z.string(),
  from: z.enum(["points", "bench sheet"]),
  signalUnit: signalUnitSchema,
  flowUnit: z.enum(["g/s", "L/s"]),
  air: curveAirSchema.nullable(),
  points: z.array(
    z.strictObject({
      signal: number,
      flow: number,
      sd: number,
      fitted: number,
      residual: number.meta({ description: "(fitted - flow) over its uncertainty" }),
    }),
  ),
  laws: z
    .array(
      z.strictObject({
        name: z.string(),
        weight: number,
        chiSquare: number,
        degreesOfFreedom: number,
        parameters: z.array(z.strictObject({ name: z.string(), estimate: number, standardError: number })),
      }),
    )
    .meta({ description: "most probable first: that one is taken; weights sum to one" }),
  rejected: z.array(z.strictObject({ name: z.string(), reason: z.string() })),
  birgeRatio: number.meta({ description: "how many times larger the scatter is than stated; 1 where it is not" }),
  rows: z.array(z.strictObject({ signal: number, flow: number, low90: number, high90: number })),
  curve: z.record(z.string(), z.unknown()).meta({ description: "airtally-curve/1" }),
  engineFileCurve: engineFileCurveSchema.nullable(),
});

const bench = z.strictObject({
  ...headOf("bench"),
  file: z.string(),
  reference: z.string(),
  signalUnit: signalUnitSchema,
  air: curveAirSchema.nullable().meta({ description: "at the meter under test" }),
  rows: z.array(
    z.strictObject({
      row: z.int(),
      signal: number,
      pressure_kPa: number,
      temperature_degC: number,
      pressureDrop_kPa: known,
      humidityRatio: number,
      flow_g_per_s: number.meta({ description: "moist air, through the meter under test" }),
      sd_g_per_s: number,
      expanded95_g_per_s: number.meta({ description: "half width at 95 %" }),
      budget: z.array(z.strictObject({ ...shareSchema.shape, sd_g_per_s: number })),
      outside: z.array(z.string()).meta({ description: "limits of the reference's standard that this row breaks" }),
    }),
  ),
});

export const METER_SCHEMA = z.discriminatedUnion("kind", [convert, curve, ambient, fit, bench]).meta({
  title: "Airtally meter answer",
  description: "One kind a sub-command. Units stand in the names; a signal is in the unit named beside it.",
});

export type MeterConversion = z.infer<typeof convert>;
export type CurveSheet = z.infer<typeof curve>;
export type AmbientSheet = z.infer<typeof ambient>;
export type FitSheet = z.infer<typeof fit>;
export type BenchSheetResult = z.infer<typeof bench>;
export type MeterResult = z.infer<typeof METER_SCHEMA>;
