/**
 * What must hold for any damaged file: a reason, or a recording in which every value equals what its own bytes say and
 * every row of an undamaged line is there unchanged.
 */
import { type Recording, readRecording } from "../../src/recording/index.ts";
import type { GoodFile } from "./good-files.ts";

export type Verdict = { readonly outcome: "reason" | "recording"; readonly fault: string | null };

const decoder = new TextDecoder("latin1");

/** `damagedFrom` and `damagedTo` are the first and last line (from 1) that the damage touched. */
export function judge(bytes: Uint8Array, good: GoodFile, damagedFrom: number, damagedTo: number): Verdict {
  const result = readRecording(bytes, { name: good.name });
  if (!result.ok) {
    const said = result.message !== "" && result.remedy !== "";
    return { outcome: "reason", fault: said ? null : `reason ${result.reason} says nothing` };
  }
  const lines = decoder
    .decode(bytes)
    .replaceAll("\0", "")
    .split(/\r\n|\r|\n/);
  const fault = wrongValue(result.value, lines, good) ?? lostRow(result.value, good, lines, damagedFrom, damagedTo);
  return { outcome: "recording", fault };
}

/** A value that its own line does not say, read in the plainest way. */
function wrongValue(recording: Recording, lines: readonly string[], good: GoodFile): string | null {
  for (const [c, column] of recording.columns.entries()) {
    if (column.form !== "number") continue;
    for (let row = 0; row < recording.rows; row++) {
      const value = column.values[row]!;
      if (Number.isNaN(value) !== (column.quality[row] !== 0))
        return `NaN without a code in column ${c + 1}, row ${row}`;
      if (column.quality[row] !== 0) continue;
      const cell = lines[recording.lines[row]! - 1]?.split(recording.delimiter)[c] ?? "";
      const plain = Number(cell.replaceAll('"', "").trim().replace(good.decimal, "."));
      if (!Object.is(plain, value))
        return `line ${recording.lines[row]}, column ${c + 1}: "${cell}" was read as ${value}`;
    }
  }
  return null;
}

/** A row of an untouched line that is not there, or not whole. */
function lostRow(
  recording: Recording,
  good: GoodFile,
  lines: readonly string[],
  from: number,
  to: number,
): string | null {
  const original = readRecording(new TextEncoder().encode(good.text), { name: good.name });
  if (!original.ok) return `the good file is not good: ${original.message}`;
  const shift = lines.length - good.text.split(/\r\n|\r|\n/).length;
  const byLine = new Map<number, number>();
  recording.lines.forEach((line, row) => {
    byLine.set(line, row);
  });
  for (let row = 0; row < original.value.rows; row++) {
    const line = original.value.lines[row]!;
    if (line >= from && line <= to) continue;
    const found = byLine.get(line > to ? line + shift : line);
    if (found === undefined) return `the row of line ${line} is lost`;
    for (const [c, column] of original.value.columns.entries()) {
      if (!Object.is(column.values[row], recording.columns[c]?.values[found]))
        return `line ${line}, column ${c + 1} changed`;
    }
  }
  return null;
}

/** Number of the line (from 1) that each byte of a text stands on. */
export function lineOf(bytes: Uint8Array, at: number): number {
  let line = 1;
  for (let i = 0; i < at; i++) {
    if (bytes[i] === 10 || (bytes[i] === 13 && bytes[i + 1] !== 10)) line++;
  }
  return line;
}
