/** A curve or bench points as CSV (meters/curves/curve-csv.ts), in air that can be. */
import { type CurveTable, curveFromCsv } from "../../meters/index.ts";
import { failure, type Result } from "../../quantities/index.ts";
import { airFault } from "./plausible-curve.ts";

export function readCurveTable(text: string): Result<CurveTable> {
  const clean = text.replace(/^\uFEFF/, "");
  if (clean.trim() === "")
    return failure("empty", "The file is empty.", "Give a curve; docs/meter.md shows each format.");
  const table = curveFromCsv(clean);
  return table.ok ? (airFault(table.value.at) ?? table) : table;
}
