/** A curve or bench points as CSV (meters/curves/curve-csv.ts), with the slips caught that would otherwise pass unseen. */
import { type CurveTable, curveFromCsv } from "../../meters/index.ts";
import { failure, findUnit, type Result } from "../../quantities/index.ts";
import { airFault } from "./plausible-curve.ts";

export function readCurveTable(text: string): Result<CurveTable> {
  const clean = text.replace(/^\uFEFF/, "");
  if (clean.trim() === "")
    return failure("empty", "The file is empty.", "Give a curve; docs/meter.md shows each format.");
  const table = curveFromCsv(clean);
  if (!table.ok) return table;
  return airNotRead(clean, table.value) ?? airFault(table.value.at) ?? mixedUnits(clean) ?? table;
}

/** An air line that is not understood is a slip, not a comment. */
function airNotRead(text: string, table: CurveTable) {
  const line = lineOf(text, /^\s*#\s*air\b/i);
  if (line === null || table.at !== null) return null;
  return failure("air-line", `"${line.text.trim()}" is not understood.`, 'Write it as "# air: 101325 Pa, 293.15 K".', {
    line: line.number,
  });
}

function mixedUnits(text: string) {
  const line = lineOf(text, /^\s*[^#\s]/);
  const dimension = (column: RegExp) => findUnit(column.exec(line?.text ?? "")?.[1] ?? "")?.dimension;
  const flow = dimension(/(?:^|,)\s*flow\s*\[(.+?)\]/i);
  const sd = dimension(/(?:^|,)\s*sd\s*\[(.+?)\]/i);
  if (line === null || sd === undefined || flow === sd) return null;
  return failure(
    "unknown-unit",
    "The flow is a mass and its sd a volume, or the other way.",
    "Give both in one unit.",
    {
      line: line.number,
    },
  );
}

function lineOf(text: string, pattern: RegExp): { readonly text: string; readonly number: number } | null {
  const lines = text.split(/\r?\n/);
  const i = lines.findIndex((line) => pattern.test(line));
  return i < 0 ? null : { text: lines[i]!, number: i + 1 };
}
