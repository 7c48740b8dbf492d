/**
 * airtally meter bench: a flow-bench sheet, from pressures and temperatures at the reference to the flow of each row with its GUM
 * budget (meters/bench/flow-bench-sheet.ts), and the points that a curve is fitted to.
 */
import { type BenchResult, flowBenchSheet, type ReferenceDevice } from "../../meters/index.ts";
import { failure, fromSi, type Result, success, unit } from "../../quantities/index.ts";
import { round } from "../outcome/points.ts";
import { figure, listed } from "../outcome/words.ts";
import { type BenchInput, parseBenchSheet } from "./bench-input/parse-bench-sheet.ts";
import { tellDevice } from "./bench-input/reference-of-sheet.ts";
import { curveAirSheet } from "./identity.ts";
import type { NamedText } from "./read-source.ts";
import type { BenchSheetResult } from "./result/meter-result-schema.ts";
import { shownSignal } from "./signals.ts";

export type MeterBenchInput = { readonly file: NamedText; readonly toolVersion: string };

/** The answer, and its points as CSV for `airtally meter fit`. */
export type MeterBench = { readonly sheet: BenchSheetResult; readonly pointsCsv: string };

export function meterBench(input: MeterBenchInput): Result<MeterBench> {
  const parsed = parseBenchSheet(input.file.text);
  if (!parsed.ok) return parsed;
  const { device, rows, uncertainties, signalUnit, at } = parsed.value;
  const worked = flowBenchSheet(device, rows, uncertainties);
  if (!worked.ok) return worked;
  const { results, points } = worked.value;
  const odd = results.findIndex(({ budget }) => !(budget.value > 0 && Number.isFinite(budget.standardUncertainty)));
  if (odd >= 0) {
    return failure(
      "reading-invalid",
      `Row ${odd + 1} of the bench sheet: the law of this reference gives no flow there.`,
      "The flow is too small for it: leave the row out, or measure it with a smaller bore.",
    );
  }
  const sheet: BenchSheetResult = {
    format: "airtally-meter/1",
    kind: "bench",
    toolVersion: input.toolVersion,
    headline: headlineOf(results),
    file: input.file.name,
    reference: tellDevice(device),
    signalUnit,
    air: at === null ? null : curveAirSheet({ ...at, assumed: false }),
    rows: results.map((result, i) => rowOf(result, i, parsed.value)),
    warnings: warningsOf(parsed.value, results),
  };
  return success({ sheet, pointsCsv: pointsToCsv(points, parsed.value) });
}

function rowOf({ row, budget, outside }: BenchResult, i: number, input: BenchInput): BenchSheetResult["rows"][number] {
  return {
    row: i + 1,
    signal: round(shownSignal(input.signalUnit, row.signal)),
    pressure_kPa: round(row.pressure / 1000),
    temperature_degC: round(fromSi(row.temperature, unit("degC"))),
    pressureDrop_kPa: hasDrop(input.device) ? round(row.pressureDrop / 1000) : null,
    humidityRatio: round(row.humidityRatio),
    flow_g_per_s: round(1000 * budget.value),
    sd_g_per_s: round(1000 * budget.standardUncertainty),
    expanded95_g_per_s: round(1000 * budget.expandedUncertainty),
    budget: budget.lines
      .filter((line) => line.share > 0)
      .map((line) => ({
        name: line.name,
        share: round(line.share),
        sd_g_per_s: round(1000 * Math.abs(line.contribution)),
      })),
    outside: [...outside],
  };
}

function hasDrop(device: ReferenceDevice): boolean {
  return device.kind === "differential-pressure" || device.kind === "venturi";
}

function headlineOf(results: readonly BenchResult[]): string {
  const flows = results.map(({ budget }) => 1000 * budget.value);
  const shares = results.map(({ budget }) => (100 * budget.expandedUncertainty) / budget.value);
  const [best, worst] = [Math.min(...shares), Math.max(...shares)].map((share) => String(Number(share.toPrecision(2))));
  const points = results.length === 1 ? "1 point" : `${results.length} points`;
  const span =
    results.length === 1 ? figure(flows[0]!) : `${figure(Math.min(...flows))} to ${figure(Math.max(...flows))}`;
  return `${points} from ${span} g/s, known to ${best === worst ? best : `${best} to ${worst}`} % (at 95 %).`;
}

function warningsOf(input: BenchInput, results: readonly BenchResult[]): BenchSheetResult["warnings"] {
  const warnings: BenchSheetResult["warnings"] = [];
  const add = (code: string, text: string) => warnings.push({ code, text });
  if (input.notStated.length > 0)
    add("counted-as-nothing", `Not stated and counted as exactly known: ${listed(input.notStated)}.`);
  if (input.humidityAssumed && input.device.kind !== "master-meter")
    add(
      "humidity-assumed",
      "Humidity is not stated everywhere: half of saturation is taken, with anything from dry to saturated as its interval.",
    );
  const outside = results.flatMap(({ outside: broken }, i) => (broken.length > 0 ? [String(i + 1)] : []));
  if (outside.length > 0)
    add(
      "outside-standard",
      `Row ${listed(outside)}: outside the limits of the reference's standard, so its stated uncertainty does not vouch for ${outside.length === 1 ? "it" : "them"}.`,
    );
  if (input.at === null)
    add(
      "air-not-stated",
      "The air at the meter under test is not stated: its curve will not know in which air it holds.",
    );
  return warnings;
}

/** In the format that curves and bench points are read in (meters/curves/curve-csv.ts). */
function pointsToCsv(
  points: readonly {
    readonly signal: number;
    readonly flow: number;
    readonly flowSd: number;
    readonly signalSd?: number;
  }[],
  { signalUnit, at }: BenchInput,
): string {
  const head = at === null ? "" : `# air: ${at.pressure} Pa, ${at.temperature} K\n`;
  const rows = points.map((p) =>
    [shownSignal(signalUnit, p.signal), 1000 * p.flow, 1000 * p.flowSd, shownSignal(signalUnit, p.signalSd ?? 0)]
      .map((cell) => Number(cell.toPrecision(9)))
      .join(","),
  );
  return `${head}signal [${signalUnit}],flow [g/s],sd [g/s],signal sd [${signalUnit}]\n${rows.join("\n")}\n`;
}
