/**
 * A flow-bench sheet as a file, format "airtally-bench-sheet/1": the reference of the bench, how well it is read, and one row a
 * point. The JSON Schema in docs/schema is generated from this.
 */
import { z } from "zod";
import { quantity } from "../../quantity-schema.ts";
import { signalText, temperatureDifference } from "./text-schema.ts";

const note = z.string().optional().meta({ description: "free text; not read" });
const length = (example: string) => quantity("length", example, { low: 1e-4, high: 2, unit: "mm" });
const share = (example: string, most = 0.1) => quantity("ratio", example, { low: 0, high: most, unit: "%" });
const pressure = () => quantity("pressure", "100.2 kPa", { low: 20_000, high: 450_000, unit: "kPa" });
const temperature = () => quantity("temperature", "22 degC", { low: 213.15, high: 368.15, unit: "degC" });

const pipe = { pipeDiameter: length("100 mm"), boreDiameter: length("60 mm") };

/** By kind, so that a slip is told against the keys of that kind. */
export const REFERENCES = {
  "orifice-plate": z.strictObject({
    note,
    kind: z.literal("orifice-plate"),
    taps: z.enum(["corner", "flange", "D and D/2"]).optional().meta({ description: "corner where left out" }),
    ...pipe,
  }),
  "isa-1932-nozzle": z.strictObject({ note, kind: z.literal("isa-1932-nozzle"), ...pipe }),
  "long-radius-nozzle": z.strictObject({ note, kind: z.literal("long-radius-nozzle"), ...pipe }),
  "venturi-nozzle": z.strictObject({ note, kind: z.literal("venturi-nozzle"), ...pipe }),
  venturi: z.strictObject({
    note,
    kind: z.literal("venturi"),
    throatDiameter: length("50 mm"),
    inletDiameter: length("100 mm"),
    dischargeCoefficient: z.number().gt(0.3).lt(1.2).meta({ description: "by its calibration" }),
    dischargeUncertainty: share("0.4 %").meta({ description: "standard, of the discharge coefficient" }),
  }),
  "critical-nozzle": z.strictObject({
    note,
    kind: z.literal("critical-nozzle"),
    throat: z.enum(["toroidal", "cylindrical"]),
    throatDiameter: length("10 mm"),
  }),
  "master-meter": z.strictObject({
    note,
    kind: z.literal("master-meter"),
    uncertainty: share("0.5 %").meta({ description: "standard, of the flow that its reading stands for" }),
  }),
} as const;

export type ReferenceKind = keyof typeof REFERENCES;
const ALL_REFERENCES = z.discriminatedUnion("kind", [
  REFERENCES["orifice-plate"],
  REFERENCES["isa-1932-nozzle"],
  REFERENCES["long-radius-nozzle"],
  REFERENCES["venturi-nozzle"],
  REFERENCES.venturi,
  REFERENCES["critical-nozzle"],
  REFERENCES["master-meter"],
]);

const row = z.strictObject({
  note,
  pressure: pressure().meta({ description: "absolute, before the reference" }),
  temperature: temperature().meta({ description: "before the reference" }),
  pressureDrop: quantity("pressure", "2.0 kPa", { low: 0, high: 400_000, unit: "kPa" })
    .optional()
    .meta({ description: "over an orifice plate, a nozzle or a venturi" }),
  humidity: share("45 %", 1)
    .optional()
    .meta({ description: "relative; anything from dry to saturated where left out" }),
  masterFlow: quantity("massFlow", "50 g/s", { low: 1e-6, high: 10, unit: "g/s" })
    .optional()
    .meta({ description: "of a master meter" }),
  signal: signalText("2.5 V").meta({ description: "of the meter under test, with its unit (V, Hz, ms, %)" }),
});

const uncertainties = z
  .strictObject({
    note,
    pressure: quantity("pressure", "50 Pa", { low: 0, high: 5000, unit: "Pa" }).optional(),
    temperature: temperatureDifference("0.3 K", 10).optional(),
    pressureDrop: quantity("pressure", "5 Pa", { low: 0, high: 5000, unit: "Pa" }).optional(),
    humidity: share("3 %", 0.5).optional().meta({ description: "of the relative humidity" }),
    bore: share("0.02 %", 0.05).optional().meta({ description: "relative, of the bore of the reference" }),
    leak: share("0.1 %").optional().meta({ description: "relative to the flow: between reference and meter" }),
    signal: signalText("2 mV").optional(),
  })
  .meta({ description: "standard uncertainties; what is left out counts as nothing, and that is said" });

function sheetWith<Reference extends z.ZodType>(reference: Reference) {
  return z
    .strictObject({
      format: z.literal("airtally-bench-sheet/1"),
      note,
      reference,
      at: z
        .strictObject({ note, pressure: pressure(), temperature: temperature() })
        .optional()
        .meta({ description: "air at the meter under test, for which its curve then holds" }),
      uncertainties,
      rows: z.array(row).min(1).max(10_000),
    })
    .meta({ title: "Airtally flow-bench sheet", description: "Readings of a flow bench, quantities with their unit." });
}

export const BENCH_SHEET_SCHEMA = sheetWith(ALL_REFERENCES);
export type BenchSheetFile = z.infer<typeof BENCH_SHEET_SCHEMA>;

export function schemaForReference(kind: unknown): z.ZodType<BenchSheetFile> {
  const known = typeof kind === "string" && kind in REFERENCES;
  return known
    ? sheetWith(REFERENCES[kind as ReferenceKind] as z.ZodType<BenchSheetFile["reference"]>)
    : BENCH_SHEET_SCHEMA;
}
