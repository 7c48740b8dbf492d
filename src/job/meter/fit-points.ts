/** Bench points made ready to be fitted: each with an uncertainty, none beyond what a meter can give. */
import type { BenchPoint } from "../../meters/index.ts";
import { type Failure, failure, parseQuantity, type Result, success } from "../../quantities/index.ts";
import type { BenchPoints } from "./bench-input/read-bench-points.ts";
import { flowUnitOf } from "./engine-file-curve.ts";
import { optionFailure } from "./option-values.ts";
import { LARGEST_FLOW, LARGEST_SIGNAL } from "./plausible-curve.ts";

/** Taken where no uncertainty is stated: of the flow, and of the largest flow at least. Common practice, no source. */
const ASSUMED_SD = { relative: 0.01, ofLargest: 0.002 } as const;

/** `stated` stands in place of the uncertainties of the file. */
export function fitPoints(read: BenchPoints, stated: string | undefined): Result<readonly BenchPoint[]> {
  const points = withUncertainty(read, stated);
  if (!points.ok) return points;
  return impossiblePoint(points.value) ?? points;
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
