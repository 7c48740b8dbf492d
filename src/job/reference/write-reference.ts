/** A healthy job as a reference file; refused where something stands accused. */
import type { EngineDescription } from "../../engine/index.ts";
import { failure, fromSi, type Result, success, unit } from "../../quantities/index.ts";
import {
  type HealthyReference,
  healthyReference,
  prepare,
  restricted,
  SPREADS,
  type TallyModel,
} from "../../tally/index.ts";
import type { AirtallyResult } from "../result.ts";
import { kindOf } from "./engine-kind.ts";
import type { ReferenceFile } from "./reference-file-schema.ts";

/** Chance from which a cause is named among those that stand accused. */
const ACCUSED = 0.05;

/** `model` is the job without references of its own, so that no engine is told twice. */
export function referenceText(
  result: AirtallyResult,
  model: TallyModel,
  titleOf: (cause: string) => string,
): Result<string> {
  if (result.answer !== "healthy") {
    const accused = result.findings
      .filter((f) => f.probability >= ACCUSED)
      .slice(0, 3)
      .map((f) => `${titleOf(f.cause)} (${inHundred(f.probability)})`);
    if (result.unexplainedProbability >= ACCUSED)
      accused.push(`something not in the catalogue (${inHundred(result.unexplainedProbability)})`);
    const stands = accused.length === 0 ? "" : ` What stands accused: ${accused.join("; ")}.`;
    return failure(
      "not-healthy",
      `No reference is made of this job: its answer is "${result.answer}", healthy ${inHundred(result.healthyProbability)}.${stands}`,
      "Only an engine judged healthy may tell of its kind: settle what is open first, with another recording or a check.",
    );
  }
  const reference = restricted(healthyReference(prepare(model, null)), ({ of }) => of === "kind");
  return success(`${JSON.stringify(fileOf(result, reference, model.engine), null, 1)}\n`);
}

function fileOf(result: AirtallyResult, reference: HealthyReference, engine: EngineDescription): ReferenceFile {
  const used = new Set(reference.values.flatMap((v) => v.quantity.unknowns));
  return {
    format: "airtally-reference/1",
    toolVersion: result.toolVersion,
    healthyProbability: result.healthyProbability,
    engine: kindOf(engine),
    recordings: result.recordings.map(({ name, sha256 }) => ({ name, sha256 })),
    spreads: [...SPREADS.values()].flatMap(({ unknown, spread, unit, reason }) =>
      spread === null || !used.has(unknown) ? [] : [{ unknown, spread, unit, reason }],
    ),
    values: reference.values.map(({ quantity, state, expected, mean }) => ({
      quantity: quantity.id,
      speed_rpm: figures(60 * state.speed),
      pressure_kPa: figures(state.pressure / 1000),
      exhaustPressure_kPa: figures(state.exhaustPressure / 1000),
      flow_g_per_s: figures(1000 * state.air),
      intakeTemperature_degC: figures(fromSi(state.intakeTemperature, unit("degC"))),
      effectivePulse_ms: figures(1000 * state.effectivePulse),
      expected: expected === null ? null : figures(expected),
      mean: figures(mean),
    })),
    covariance: lowerTriangle(reference.covariance, reference.values.length),
    before: lowerTriangle(reference.before, reference.values.length),
  };
}

function lowerTriangle(matrix: Float64Array, n: number): number[] {
  const out: number[] = [];
  for (let i = 0; i < n; i++) for (let j = 0; j <= i; j++) out.push(figures(matrix[i * n + j]!));
  return out;
}

/** Ten figures: a covariance of neighbours that move nearly as one must stay one. */
function figures(value: number): number {
  return Number(value.toPrecision(10));
}

function inHundred(probability: number): string {
  return `${Math.round(100 * probability)} in 100`;
}
