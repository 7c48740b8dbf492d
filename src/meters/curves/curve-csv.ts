/**
 * A curve, or bench points, as plain CSV with units in the header.
 *
 *     # air: 101325 Pa, 293.15 K
 *     signal [V],flow [g/s],sd [g/s]
 *     0.98,2.1,0.03
 *
 * Column names are signal, flow, sd (standard uncertainty of the flow) and signal sd; the last two may be absent. Decimal point,
 * comma between columns. Anything else is refused with its line.
 */
import type { SignalUnit } from "../../engine/index.ts";
import { failure, findUnit, fromSi, type Result, success, toSi, type Unit, unit } from "../../quantities/index.ts";
import type { BenchPoint } from "./fit-candidates.ts";
import { curveFunctions, type FlowCurve } from "./meter-curve.ts";

export type CurveTable = {
  readonly signalUnit: SignalUnit;
  readonly flow: "mass" | "volume";
  readonly at: { readonly pressure: number; readonly temperature: number } | null;
  /** SI; flowSd is NaN where the file has no such column */
  readonly points: readonly BenchPoint[];
};

export type CurveCsvReason =
  | "no-header"
  | "unknown-column"
  | "unknown-unit"
  | "not-a-number"
  | "too-few-points"
  | "air-line";

const SIGNAL_UNITS: { readonly [symbol: string]: SignalUnit } = { V: "V", Hz: "Hz", ms: "ms", "1": "ratio" };
const SYMBOL_OF: { readonly [unit in SignalUnit]: string } = { V: "V", Hz: "Hz", ms: "ms", ratio: "1" };
const COLUMNS = ["signal", "flow", "sd", "signal sd"] as const;
type ColumnName = (typeof COLUMNS)[number];

/** The curve at `rows` equally spaced signals, or at its own points. */
export function curveToCsv(curve: FlowCurve, flowSymbol: string, rows = 65): string {
  const flowUnit = unit(flowSymbol);
  const signalUnit = unit(SYMBOL_OF[curve.signalUnit]);
  const { read } = curveFunctions(curve);
  const [low, high] = curve.domain;
  const signals =
    curve.form.kind === "points"
      ? curve.form.points.map(([signal]) => signal)
      : Array.from({ length: rows }, (_, i) => low + ((high - low) * i) / (rows - 1));
  const head = curve.at === null ? "" : `# air: ${curve.at.pressure} Pa, ${curve.at.temperature} K\n`;
  const withBand = curve.band !== null;
  const columns = [`signal [${curve.signalUnit === "ratio" ? "ratio" : signalUnit.symbol}]`, `flow [${flowSymbol}]`];
  if (withBand) columns.push(`sd [${flowSymbol}]`);
  const lines = signals.map((signal) => {
    const { flow, sd } = read(signal);
    const cells = [fromSi(signal, signalUnit), fromSi(flow, flowUnit)];
    if (withBand) cells.push(fromSi(sd ?? Number.NaN, flowUnit));
    return cells.map((cell) => Number(cell.toPrecision(15))).join(",");
  });
  return `${head}${columns.join(",")}\n${lines.join("\n")}\n`;
}

export function curveFromCsv(text: string): Result<CurveTable, CurveCsvReason> {
  let at: CurveTable["at"] = null;
  let columns: readonly { readonly name: ColumnName; readonly unit: Unit }[] | null = null;
  const points: BenchPoint[] = [];
  for (const [i, raw] of text.split(/\r?\n/).entries()) {
    const line = raw.trim();
    if (line === "") continue;
    if (line.startsWith("#")) {
      const air = readAir(line, i + 1);
      if (!air.ok) return air;
      at = air.value ?? at;
    } else if (columns === null) {
      const header = readHeader(line, i + 1);
      if (!header.ok) return header;
      columns = header.value;
    } else {
      const cells = line.split(",").map((cell) => (cell.trim() === "" ? Number.NaN : Number(cell)));
      const wrong = columns.findIndex((_, j) => !Number.isFinite(cells[j]));
      if (wrong >= 0 || cells.length !== columns.length) {
        return failure(
          "not-a-number",
          `"${line}" has no number in column ${Math.max(wrong, 0) + 1}, or columns too many.`,
          REMEDY,
          {
            line: i + 1,
          },
        );
      }
      points.push(pointOf(columns, cells));
    }
  }
  if (columns === null) return failure("no-header", "The curve has no line that names its columns.", REMEDY);
  if (points.length < 2) return failure("too-few-points", "The curve has fewer than two rows of numbers.", REMEDY);
  const flowUnit = columns.find((c) => c.name === "flow")!.unit;
  const signalUnit = SIGNAL_UNITS[columns.find((c) => c.name === "signal")!.unit.symbol]!;
  return success({ signalUnit, flow: flowUnit.dimension === "massFlow" ? "mass" : "volume", at, points });
}

const REMEDY =
  'Write a header such as "signal [V],flow [g/s]" and one row of numbers a point, decimal point, comma between.';

function readHeader(line: string, number: number) {
  const columns: { name: ColumnName; unit: Unit }[] = [];
  for (const cell of line.split(",")) {
    const [, name = "", symbol = ""] = /^\s*([a-z ]+?)\s*\[(.+)\]\s*$/i.exec(cell) ?? [];
    const known = COLUMNS.find((column) => column === name.toLowerCase());
    if (known === undefined) {
      return failure("unknown-column", `"${cell.trim()}" is no column of a curve.`, REMEDY, { line: number });
    }
    const found = findUnit(symbol);
    const fits =
      found !== undefined &&
      (known === "flow" || known === "sd"
        ? found.dimension === "massFlow" || found.dimension === "volumeFlow"
        : found.symbol in SIGNAL_UNITS);
    if (!fits) return failure("unknown-unit", `"${symbol}" is no unit for ${known}.`, REMEDY, { line: number });
    columns.push({ name: known, unit: found });
  }
  const names = columns.map((c) => c.name);
  if (!names.includes("signal") || !names.includes("flow")) {
    return failure("unknown-column", "The header names no signal or no flow.", REMEDY, { line: number });
  }
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined)
    return failure("unknown-column", `The header names ${twice} twice.`, REMEDY, { line: number });
  const dimensionOf = (name: ColumnName) => columns.find((c) => c.name === name)?.unit.dimension;
  for (const [value, sd] of [
    ["flow", "sd"],
    ["signal", "signal sd"],
  ] as const) {
    if (dimensionOf(sd) === undefined || dimensionOf(sd) === dimensionOf(value)) continue;
    const what = `The ${value} and its sd are of different kinds, such as a mass and a volume.`;
    return failure("unknown-unit", what, "Give both in one unit.", { line: number });
  }
  return success(columns);
}

function pointOf(
  columns: readonly { readonly name: ColumnName; readonly unit: Unit }[],
  cells: readonly number[],
): BenchPoint {
  const value = (name: ColumnName): number | undefined => {
    const j = columns.findIndex((c) => c.name === name);
    return j < 0 ? undefined : toSi(cells[j]!, columns[j]!.unit);
  };
  const signalSd = value("signal sd");
  const point = { signal: value("signal")!, flow: value("flow")!, flowSd: value("sd") ?? Number.NaN };
  return signalSd === undefined ? point : { ...point, signalSd };
}

/** An air line that is not understood is a slip, not a comment; null for any other comment. */
function readAir(comment: string, number: number): Result<CurveTable["at"], "air-line"> {
  if (!/^#\s*air\b/i.test(comment)) return success(null);
  const [, ...numbers] = /^#\s*air:\s*([\d.e+-]+)\s*Pa,\s*([\d.e+-]+)\s*K\s*$/i.exec(comment) ?? [];
  const [pressure = Number.NaN, temperature = Number.NaN] = numbers.map(Number);
  if (pressure > 0 && temperature > 0 && Number.isFinite(pressure * temperature))
    return success({ pressure, temperature });
  const remedy = 'Write it as "# air: 101325 Pa, 293.15 K".';
  return failure("air-line", `"${comment}" is not understood.`, remedy, { line: number });
}
