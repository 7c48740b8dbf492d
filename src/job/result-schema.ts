/** The result file as a schema (the types of result.ts, with words for every part); docs/schema/result.schema.json is made from it. */
import { z } from "zod";

const probability = z.number().min(0).max(1);
const bank = z.union([z.literal(1), z.literal(2)]).nullable();
const witness = z.enum(["meter", "meter-2", "pressure", "throttle", "fuel", "fuel-bank1", "fuel-bank2", "exhaust"]);
const numbers = z.array(z.number());

const word = z.strictObject({
  massFlow_g_per_s: z.number().meta({
    description:
      "dry air into the cylinders as this witness has it; the pressure witness with this engine's reconciled breathing",
  }),
  relativeSd: z
    .number()
    .meta({ description: "of this point: scatter, resolution, timing, and what its region shares" }),
});

const evidence = z.strictObject({
  text: z.string(),
  points: z.array(z.int()).meta({ description: "ids of operating points" }),
  witness: witness.nullable(),
  departure: z.number().nullable().meta({ description: "ln(witness / common answer)" }),
  sd: z.number().nullable(),
});

const finding = z.strictObject({
  cause: z.string(),
  bank,
  probability: probability.meta({ description: "marginal" }),
  priorProbability: probability,
  bayesFactor: z
    .number()
    .min(0)
    .nullable()
    .meta({ description: "of this cause alone, against healthy: 1 where it is not seen; null when infinite" }),
  sizes: z.array(
    z.strictObject({ name: z.string(), value: z.number(), unit: z.string(), low90: z.number(), high90: z.number() }),
  ),
  restsOn: z
    .array(z.string())
    .meta({ description: "witnesses, and assumptions whose halving or doubling would move the chance by a fifth" }),
  evidence: z.array(evidence),
});

const point = z.strictObject({
  id: z.int(),
  recording: z.int(),
  start_s: z.number(),
  end_s: z.number(),
  states: z.array(z.string()),
  speed_rpm: z.number().nullable(),
  manifoldPressure_kPa: z.number().nullable(),
  censored: z.array(z.string()).meta({ description: "witnesses that only bound the air here" }),
  witnesses: z.partialRecord(witness, word),
  air_g_per_s: z.number().nullable().meta({ description: "the common answer: dry fresh air into the cylinders" }),
  air_low90: z.number().nullable(),
  air_high90: z.number().nullable(),
});

export const RESULT_SCHEMA = z
  .strictObject({
    format: z.literal("airtally-result/1"),
    toolVersion: z.string(),
    seed: z.int(),
    answer: z.enum(["proven", "likely", "open", "healthy"]),
    warning: z.string().nullable(),
    healthyProbability: probability,
    unexplainedProbability: probability,
    othersProbability: probability,
    findings: z.array(finding).meta({ description: "most probable first" }),
    explanations: z
      .array(z.strictObject({ causes: z.array(z.string()), probability }))
      .meta({ description: "at least 0.1 % each; with healthy, unexplained and others they sum to one" }),
    inseparable: z
      .array(z.array(z.string()))
      .meta({ description: "groups of causes that this recording cannot tell apart" }),
    excluded: z
      .array(z.strictObject({ cause: z.string(), beyond: z.tuple([z.number(), z.number()]), unit: z.string() }))
      .meta({ description: "sizes outside are ruled out at 95 %" }),
    nextChecks: z.array(
      z.strictObject({
        check: z.string(),
        text: z.string(),
        informationBits: z.number(),
        minutes: z.number(),
        settles: z.array(z.string()),
      }),
    ),
    operatingPoints: z.array(point),
    meterCurve: z
      .strictObject({ axis_g_per_s: numbers, values: numbers, low90: numbers, high90: numbers, evidence: numbers })
      .nullable(),
    breathing: z
      .strictObject({
        axisSpeed_rpm: numbers,
        axisPressure_kPa: numbers,
        values: z.array(numbers),
        low90: z.array(numbers),
        high90: z.array(numbers),
        evidence: z.array(numbers),
      })
      .nullable(),
    assumptions: z.array(
      z.strictObject({
        name: z.string(),
        value: z.number(),
        unit: z.string(),
        reason: z.string(),
        sensitivity: z.string(),
      }),
    ),
    notVisited: z.array(z.strictObject({ region: z.string(), leavesOpen: z.array(z.string()) })),
    recordings: z.array(z.strictObject({ name: z.string(), sha256: z.string() })),
    warnings: z.array(z.strictObject({ code: z.string(), text: z.string() })),
  })
  .meta({
    title: "Airtally result",
    description: "The answer to one job. Units stand in the names; departures are logarithms of ratios.",
  });
