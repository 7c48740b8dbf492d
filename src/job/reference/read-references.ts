/** Reference files to what the tally hears of them: checked against the engine, the recordings and their own numbers. */
import type { EngineDescription } from "../../engine/index.ts";
import { failure, type Result, success, toSi, unit } from "../../quantities/index.ts";
import { type HealthyReference, isSound, REFERENCE_QUANTITIES, type Spreads } from "../../tally/index.ts";
import { parseJson } from "../json-text.ts";
import type { AssumptionResult, ResultWarning } from "../result.ts";
import { type Document, schemaProblem } from "../schema-problem.ts";
import { compareKinds, kindOf } from "./engine-kind.ts";
import { REFERENCE_FILE_SCHEMA, type ReferenceFile } from "./reference-file-schema.ts";

const REFERENCE_FILE: Document = {
  name: "reference file",
  schema: REFERENCE_FILE_SCHEMA,
  describedIn: "docs/reference-file.md",
};

export type ReferenceInput = { readonly name: string; readonly text: string };

export type ReadReferences = {
  readonly references: readonly HealthyReference[];
  readonly spreads: Spreads;
  readonly warnings: readonly ResultWarning[];
  /** the spreads, as they stand among the assumptions of the result */
  readonly assumptions: readonly AssumptionResult[];
  /** sha256 of the recordings they were made of */
  readonly recordings: ReadonlySet<string>;
};

export function readReferences(inputs: readonly ReferenceInput[], engine: EngineDescription): Result<ReadReferences> {
  const files: ReferenceFile[] = [];
  const references: HealthyReference[] = [];
  const warnings: ResultWarning[] = [];
  for (const { name, text } of inputs) {
    const read = readFile(text);
    if (!read.ok) return { ...read, where: { file: name, ...read.where } };
    const { file, reference } = read.value;
    const { differ, untold } = compareKinds(file.engine, kindOf(engine));
    if (differ.length > 0) {
      return failure(
        "another-kind",
        `The reference is of another kind of engine: ${differ.join("; ")}.`,
        "Use a reference of the same kind, or none; if the engine file is wrong, correct it.",
        { file: name },
      );
    }
    const healthy = Math.round(100 * file.healthyProbability);
    warnings.push({
      code: "reference-used",
      text: `What is believed of this kind of engine before looking was narrowed by the reference ${name} (${file.recordings.map((r) => r.name).join(", ")}; judged healthy at ${healthy} in 100).`,
    });
    if (untold.length > 0)
      warnings.push({
        code: "reference-kind-unsure",
        text: `Whether the reference ${name} is of the same kind is not sure: ${untold.join(", ")} stated in only one of the two. State it in both.`,
      });
    files.push(file);
    references.push(reference);
  }
  return success({
    references,
    spreads: widest(files),
    warnings,
    assumptions: spreadRows(files),
    recordings: new Set(files.flatMap((f) => f.recordings.map((r) => r.sha256))),
  });
}

function readFile(text: string): Result<{ file: ReferenceFile; reference: HealthyReference }> {
  const json = parseJson(text, "reference file");
  if (!json.ok) return json;
  const parsed = REFERENCE_FILE_SCHEMA.safeParse(json.value, { reportInput: true });
  if (!parsed.success) return schemaProblem(parsed.error, REFERENCE_FILE);
  const file = parsed.data;
  const n = file.values.length;
  const unknown = file.values.find((v) => !REFERENCE_QUANTITIES.some((q) => q.id === v.quantity));
  if (unknown !== undefined) return damaged(`it has a quantity "${unknown.quantity}" that this version does not know`);
  const size = (n * (n + 1)) / 2;
  if (file.covariance.length !== size || file.before.length !== size)
    return damaged(`${n} values need ${size} numbers in "covariance" and in "before"`);
  const reference = referenceOf(file);
  return isSound(reference)
    ? success({ file, reference })
    : damaged("its covariances are none, or know less than was believed before looking");
}

function damaged(why: string): Result<never> {
  return failure(
    "reference-damaged",
    `The reference file cannot be used: ${why}.`,
    "Make it anew with airtally check --reference-out; only its spreads and its note may be edited.",
  );
}

function referenceOf(file: ReferenceFile): HealthyReference {
  return {
    values: file.values.map((v) => ({
      quantity: REFERENCE_QUANTITIES.find((q) => q.id === v.quantity)!,
      state: {
        speed: v.speed_rpm / 60,
        pressure: 1000 * v.pressure_kPa,
        exhaustPressure: 1000 * v.exhaustPressure_kPa,
        air: v.flow_g_per_s / 1000,
        intakeTemperature: toSi(v.intakeTemperature_degC, unit("degC")),
        effectivePulse: v.effectivePulse_ms / 1000,
      },
      expected: v.expected,
      mean: v.mean,
    })),
    covariance: whole(file.covariance, file.values.length),
    before: whole(file.before, file.values.length),
  };
}

function whole(triangle: readonly number[], n: number): Float64Array {
  const out = new Float64Array(n * n);
  let at = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      out[i * n + j] = triangle[at]!;
      out[j * n + i] = triangle[at]!;
      at += 1;
    }
  }
  return out;
}

/** Where two files state different spreads, the wider holds. */
function widest(files: readonly ReferenceFile[]): Map<string, number> {
  const out = new Map<string, number>();
  for (const { unknown, spread } of files.flatMap((f) => f.spreads))
    out.set(unknown, Math.max(spread, out.get(unknown) ?? 0));
  return out;
}

function spreadRows(files: readonly ReferenceFile[]): AssumptionResult[] {
  const wide = widest(files);
  const rows = new Map(files.flatMap((f) => f.spreads).map((row) => [row.unknown, row]));
  return [...rows.values()].map(({ unknown, unit, reason }) => ({
    name: `reference: ${unknown} from engine to engine`,
    value: wide.get(unknown)!,
    unit,
    reason,
    sensitivity: "not varied",
  }));
}
