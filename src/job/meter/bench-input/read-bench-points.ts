/** What a curve can be fitted to: points as CSV or JSON, or a flow-bench sheet, whose flows are worked out first. */
import type { SignalUnit } from "../../../engine/index.ts";
import { type BenchPoint, flowBenchSheet } from "../../../meters/index.ts";
import { failure, type Result, success, toSi, unit } from "../../../quantities/index.ts";
import { parseJson } from "../../json-text.ts";
import { schemaProblem } from "../../schema-problem.ts";
import { readCurveTable } from "../read-curve-table.ts";
import { formatOf, isJson, type NamedText } from "../read-source.ts";
import { BENCH_POINTS_SCHEMA } from "./bench-points-schema.ts";
import { parseBenchSheet, si } from "./parse-bench-sheet.ts";

export type BenchPoints = {
  readonly from: "points" | "bench sheet";
  readonly signalUnit: SignalUnit;
  readonly flow: "mass" | "volume";
  readonly at: { readonly pressure: number; readonly temperature: number } | null;
  /** SI; flowSd is NaN where the file states none */
  readonly points: readonly BenchPoint[];
};

export function readBenchPoints(file: NamedText): Result<BenchPoints> {
  if (!isJson(file.text)) {
    const table = readCurveTable(file.text);
    return table.ok ? success({ from: "points", ...table.value }) : table;
  }
  const json = parseJson(file.text, "file");
  if (!json.ok) return json;
  const format = formatOf(json.value);
  if (format?.startsWith("airtally-bench-sheet/")) return fromSheet(file.text);
  if (format?.startsWith("airtally-bench-points/")) return fromJson(json.value);
  return failure(
    "not-bench-points",
    `The file is JSON of ${format === null ? "no stated format" : `the format "${format}"`}, not bench points.`,
    "Give bench points (CSV, or airtally-bench-points/1) or a bench sheet (airtally-bench-sheet/1); docs/meter.md shows each.",
  );
}

function fromSheet(text: string): Result<BenchPoints> {
  const input = parseBenchSheet(text);
  if (!input.ok) return input;
  const { device, rows, uncertainties, signalUnit, at } = input.value;
  const sheet = flowBenchSheet(device, rows, uncertainties);
  return sheet.ok ? success({ from: "bench sheet", signalUnit, flow: "mass", at, points: sheet.value.points }) : sheet;
}

function fromJson(json: unknown): Result<BenchPoints> {
  const parsed = BENCH_POINTS_SCHEMA.safeParse(json, { reportInput: true });
  if (!parsed.success) {
    const document = { name: "bench points", schema: BENCH_POINTS_SCHEMA, describedIn: "docs/meter.md" };
    return schemaProblem(parsed.error, document);
  }
  const { signalUnit, flowUnit, at, points } = parsed.data;
  const bare = points.findIndex((p) => p.sd === undefined);
  if (bare >= 0 && points.some((p) => p.sd !== undefined))
    return failure("not-valid", `Point ${bare + 1} has no sd, others have.`, "Give sd for all points or for none.");
  const flow = unit(flowUnit);
  const signalFactor = signalUnit === "ms" ? unit("ms").factor : 1;
  return success({
    from: "points",
    signalUnit,
    flow: flow.dimension === "massFlow" ? "mass" : "volume",
    at:
      at === undefined
        ? null
        : { pressure: si(at.pressure, "pressure"), temperature: si(at.temperature, "temperature") },
    points: points.map((p) => ({
      signal: p.signal * signalFactor,
      flow: toSi(p.flow, flow),
      flowSd: p.sd === undefined ? Number.NaN : toSi(p.sd, flow),
      ...(p.signalSd === undefined ? {} : { signalSd: p.signalSd * signalFactor }),
    })),
  });
}
