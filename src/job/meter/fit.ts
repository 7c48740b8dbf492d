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
  type FittedForm,
  fitCurve,
} from "../../meters/index.ts";
import { failure, type Result, success } from "../../quantities/index.ts";
import { round } from "../outcome/points.ts";
import { type BenchPoints, readBenchPoints } from "./bench-input/read-bench-points.ts";
import { SD_TO_90 } from "./drawing.ts";
import { engineFileCurve, flowUnitOf, shownFlow } from "./engine-file-curve.ts";
import { fitPoints } from "./fit-points.ts";
import { fitHeadline, fitWarnings } from "./fit-words.ts";
import { curveAirSheet } from "./identity.ts";
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

export function meterFit(input: MeterFitInput): Result<MeterFit> {
  const read = readBenchPoints(input.file);
  if (!read.ok) return read;
  const points = fitPoints(read.value, input.sd);
  if (!points.ok) return points;
  const { signalUnit, flow, at } = read.value;
  const only = input.law === undefined ? {} : { only: [FIT_LAWS[input.law]] };
  const fit = fitCurve(points.value, { signalUnit, flow, at, ...only });
  if (!fit.ok) return fit;
  if (!isDetermined(fit.value.chosen))
    return failure("no-law-fits", "No law fits these points.", "Check the numbers of the points.");
  const laws = fit.value.candidates.filter(isDetermined);
  const totalWeight = laws.reduce((sum, law) => sum + law.weight, 0);
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
    laws: laws.map((c) => ({
      name: c.name,
      weight: round(c.weight / totalWeight),
      chiSquare: round(c.chiSquare),
      degreesOfFreedom: c.degreesOfFreedom,
      parameters: c.parameters.map((p) => ({
        name: p.name,
        estimate: round(p.estimate),
        standardError: round(p.standardError),
      })),
    })),
    rejected: [
      ...fit.value.rejected,
      ...fit.value.candidates
        .filter((c) => !isDetermined(c))
        .map(({ name }) => ({ name, reason: "its numbers are left open" })),
    ],
    birgeRatio: round(fit.value.birgeRatio),
    rows: rowsOf(fit.value),
    curve: JSON.parse(curveJson) as FitSheet["curve"],
    engineFileCurve: table.ok ? table.value : null,
    warnings: fitWarnings(read.value, facts, table.ok ? null : table),
  };
  return success({ sheet, curveJson, curveCsv: curveToCsv(curve, flowUnitOf(flow)) });
}

/** Whether a law's numbers and its band came out as numbers: points far from every law can leave them without. */
function isDetermined({ parameters, chiSquare, curve }: FittedForm): boolean {
  const { read } = curveFunctions(curve);
  const band = curve.domain.flatMap((signal) => [read(signal).flow, read(signal).sd ?? 0]);
  const numbers = parameters.flatMap((p) => [p.estimate, p.standardError]);
  return [chiSquare, ...numbers, ...band].every(Number.isFinite);
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
