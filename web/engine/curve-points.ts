/** Points of a meter curve as people type them, one pair a line, and back. */
import { failure, type Result, success } from "../../src/quantities/index.ts";

export type Points = readonly (readonly [number, number])[];

export function parsePoints(text: string): Result<Points, "not-points"> {
  const points: [number, number][] = [];
  for (const [k, line] of text.split("\n").entries()) {
    if (line.trim() === "") continue;
    const parts = line.trim().split(/[\s;]+/);
    const [signal, flow] = parts.map(Number);
    if (
      parts.length !== 2 ||
      signal === undefined ||
      flow === undefined ||
      Number.isNaN(signal) ||
      Number.isNaN(flow)
    ) {
      return failure(
        "not-points",
        `Line ${k + 1}, "${line.trim()}", is not a signal and a flow.`,
        'Write two numbers with a decimal point and a space between them, such as "0.98 2.1".',
      );
    }
    points.push([signal, flow]);
  }
  if (points.length < 2) return failure("not-points", "A curve has at least two points.", "Add a line for each point.");
  return success(points);
}

export function formatPoints(points: unknown): string {
  if (!Array.isArray(points)) return "";
  return points.map((point) => (Array.isArray(point) ? point.join(" ") : String(point))).join("\n");
}
