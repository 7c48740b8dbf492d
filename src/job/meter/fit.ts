/**
 * airtally meter fit: a curve from bench points, the law chosen by evidence (meters/curves/fit-curve.ts). A correction from
 * recordings of an engine is another command.
 */
import {
  type BenchPoint,
  type CurveFit,
  curveFunctions,
  curveToCsv,
  curveToJson,
  fitCurve,
} from "../../meters/index.ts";
import { type Failure, failure, parseQuantity, type Result, success } from "../../quantities/index.ts";
import { round } from "../outcome/points.ts";
import { type BenchPoints, readBenchPoints } from "./bench-input/read-bench-points.ts";
import { SD_TO_90 } from "./drawing.ts";
import { engineFileCurve, flowUnitOf, shownFlow } from "./engine-file-curve.ts";
import { fitHeadline, fitWarnings } from "./fit-words.ts";
import { curveAirSheet } from "./identity.ts";
import { optionFailure } from "./option-values.ts";
import { LARGEST_FLOW, LARGEST_SIGNAL } from "./plausible-curve.ts";
import { type NamedText, readMeterSource } from "./read-source.ts";
import type { FitSheet } from "./result/meter-result-schema.ts";
import { shownSignal } from "./signals.ts";

export const FIT_LAWS = {
  king: "King's law",
  power: "power law",
  exponential: "exponential",
  film: "film law",
  line: "straight line",
  "polynomial-2": "polynomial of degree 2",
  "polynomial-3": "polynomial of degree 3",
  "polynomial-4": "polynomial of degree 4",
  "polynomial-5": "polynomial of degree 5",
} as const;
export type FitLawId = keyof typeof FIT_LAWS;

export type MeterFitInput = {
  readonly file: NamedText;
  /** this law alone; all where not named */
  readonly law?: FitLawId | undefined;
  /** standard uncertainty of every flow, "1 %" or "0.1 g/s", instead of what the file says */
  readonly sd?: string | undefined;
  readonly toolVersion: string;
};

/** The answer, and the curve as files. */
export type MeterFit = {
  readonly sheet: FitSheet;
  /** airtally-curve/1 */
  readonly curveJson: string;
  /** the same at equally spaced signals */
  readonly curveCsv: string;
};

const ROWS = 65;

/** Taken where no uncertainty is stated: of the flow, and of the largest flow at least. Common practice, no source. */
const ASSUMED_SD = { relative: 0.01, ofLargest: 0.002 } as const;

export function meterFit(input: MeterFitInput): Result<MeterFit> {
  const read = readBenchPoints(input.file);
  if (!read.ok) return read;
  const points = withUncertainty(read.value, input.sd);
  if (!points.ok) return points;
  const impossible = impossiblePoint(points.value);
  if (impossible !== null) return impossible;
  const { signalUnit, flow, at } = read.value;
  const only = input.law === undefined ? {} : { only: [FIT_LAWS[input.law]] };
  const fit = fitCurve(points.value, { signalUnit, flow, at, ...only });
  if (!fit.ok) return fit;
  if (![fit.value.chosen.chiSquare, fit.value.birgeRatio].every(Number.isFinite))
    return failure("no-law-fits", "No law fits these points.", "Check the numbers of the points.");
  const { curve } = fit.value.chosen;
  const curveJson = curveToJson(curve);
  // Read back as any curve file is: what would be refused there is told here.
  const asSource = readMeterSource({ name: input.file.name, text: curveJson }, {});
  const table = asSource.ok ? engineFileCurve(curve) : asSource;
  const facts = { assumedSd: input.sd === undefined && read.value.points.some((p) => !(p.flowSd > 0)), fit: fit.value };
  const sheet: FitSheet = {
    format: "airtally-meter/1",
    kind: "fit",
    toolVersion: input.toolVersion,
    headline: fitHeadline(fit.value, points.value),
    file: input.file.name,
    from: read.value.from,
    signalUnit,
    flowUnit: flowUnitOf(flow),
    air: at === null ? null : curveAirSheet({ ...at, assumed: false }),
    points: pointsOf(fit.value, points.value, read.value),
    laws: fit.value.candidates.map((c) => ({
      name: c.name,
      weight: round(c.weight),
      chiSquare: round(c.chiSquare),
      degreesOfFreedom: c.degreesOfFreedom,
      parameters: c.parameters.map((p) => ({
        name: p.name,
        estimate: round(p.estimate),
        standardError: round(p.standardError),
      })),
    })),
    rejected: fit.value.rejected.map((r) => ({ ...r })),
    birgeRatio: round(fit.value.birgeRatio),
    rows: rowsOf(fit.value),
    curve: JSON.parse(curveJson) as FitSheet["curve"],
    engineFileCurve: table.ok ? table.value : null,
    warnings: fitWarnings(read.value, facts, table.ok ? null : table),
  };
  return success({ sheet, curveJson, curveCsv: curveToCsv(curve, flowUnitOf(flow)) });
}

/** of the largest flow: nobody knows a flow better */
const SMALLEST_SD = 1e-6;

function impossiblePoint(points: readonly BenchPoint[]): Failure<"point-invalid"> | null {
  const largest = Math.max(...points.map((p) => Math.abs(p.flow)));
  const i = points.findIndex(
    (p) =>
      !(Math.abs(p.signal) <= LARGEST_SIGNAL && Math.abs(p.signalSd ?? 0) <= LARGEST_SIGNAL) ||
      !(Math.abs(p.flow) <= LARGEST_FLOW && p.flowSd <= LARGEST_FLOW && p.flowSd >= SMALLEST_SD * largest),
  );
  if (i < 0) return null;
  return failure(
    "point-invalid",
    `Point ${i + 1} has a signal, a flow or an uncertainty that cannot be.`,
    "Check its numbers and their units; an uncertainty must be at least a millionth of the largest flow.",
  );
}

function withUncertainty({ points, flow }: BenchPoints, stated: string | undefined): Result<readonly BenchPoint[]> {
  if (stated !== undefined) {
    const relative = parseQuantity(stated, "ratio");
    const absolute = parseQuantity(stated, flow === "mass" ? "massFlow" : "volumeFlow");
    if (relative.ok && relative.value > 0)
      return success(points.map((p) => ({ ...p, flowSd: relativeSd(p, points, relative.value) })));
    if (absolute.ok && absolute.value > 0) return success(points.map((p) => ({ ...p, flowSd: absolute.value })));
    return optionFailure(
      `"${stated}" is no uncertainty of these flows.`,
      `Write for example "1 %" or "0.1 ${flowUnitOf(flow)}", more than nothing.`,
    );
  }
  return success(points.map((p) => (p.flowSd > 0 ? p : { ...p, flowSd: relativeSd(p, points, ASSUMED_SD.relative) })));
}

/** A share of the flow, never less than a small share of the largest: a flow of nothing is not known exactly. */
function relativeSd(point: BenchPoint, points: readonly BenchPoint[], relative: number): number {
  const largest = Math.max(...points.map((p) => Math.abs(p.flow)));
  const least = (ASSUMED_SD.ofLargest / ASSUMED_SD.relative) * relative * largest;
  return Math.max(relative * Math.abs(point.flow), least);
}

function pointsOf(fit: CurveFit, points: readonly BenchPoint[], read: BenchPoints): FitSheet["points"] {
  const { read: readCurve } = curveFunctions(fit.chosen.curve);
  return points.map((p, i) => ({
    signal: round(shownSignal(read.signalUnit, p.signal)),
    flow: round(shownFlow(read.flow, p.flow)),
    sd: round(shownFlow(read.flow, p.flowSd)),
    fitted: round(shownFlow(read.flow, readCurve(p.signal).flow)),
    residual: round(fit.chosen.residuals[i]!),
  }));
}

function rowsOf(fit: CurveFit): FitSheet["rows"] {
  const { curve } = fit.chosen;
  const { read } = curveFunctions(curve);
  const [low, high] = curve.domain;
  return Array.from({ length: ROWS }, (_, i) => {
    const signal = low + ((high - low) * i) / (ROWS - 1);
    const { flow, sd } = read(signal);
    const at = (z: number) => round(shownFlow(curve.flow, flow + z * (sd ?? 0)));
    return {
      signal: round(shownSignal(curve.signalUnit, signal)),
      flow: at(0),
      low90: at(-SD_TO_90),
      high90: at(SD_TO_90),
    };
  });
}
