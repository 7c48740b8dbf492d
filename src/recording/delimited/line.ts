/** Lines in a byte buffer: ended by LF, CR or CR LF, in any mixture. */
import { type Failure, failure } from "../../quantities/index.ts";
import { MAX_LINE_BYTES } from "../limits.ts";
import type { RecordingReason } from "../recording.ts";
import { decodeText, repairDoubleEncoding } from "../text/decode.ts";

export const LF = 10;
export const CR = 13;

/** End of the line that begins at `start` (exclusive of its ending), or -1 where the buffer ends before the line does. */
export function lineEnd(bytes: Uint8Array, start: number): number {
  const end = Math.min(bytes.length, start + MAX_LINE_BYTES + 1);
  for (let i = start; i < end; i++) {
    const byte = bytes[i];
    if (byte === LF || byte === CR) return i;
  }
  return -1;
}

/** Start of the line after one that ends at `end`. */
export function nextLine(bytes: Uint8Array, end: number): number {
  return bytes[end] === CR && bytes[end + 1] === LF ? end + 2 : end + 1;
}

/** Position behind the last whole line at or after `start`; a CR as the last byte may be half of an ending. */
export function behindLastLine(bytes: Uint8Array, start: number): number {
  for (let i = bytes.length - 1; i >= start; i--) {
    if (bytes[i] === LF || (bytes[i] === CR && i + 1 < bytes.length)) return i + 1;
  }
  return start;
}

export type Lines = {
  readonly text: readonly string[];
  /** where each line begins */
  readonly starts: readonly number[];
  /** number of each line, counted from 0 */
  readonly numbers: readonly number[];
  readonly end: number;
};

/** A quoted cell of a header may hold line ends ("Engine speed\n[1/min]"); further than this they go on by mistake. */
const LINES_JOINED = 6;
const HEADER_WITHIN = 30;

/** Lines from `start`, at most `most` of them and about `bytesAtMost`, but never fewer than four where there are as many. */
export function takeLines(bytes: Uint8Array, start: number, most: number, bytesAtMost: number, whole: boolean): Lines {
  const text: string[] = [];
  const starts: number[] = [];
  let p = start;
  while (p < bytes.length && text.length < most && (p - start < bytesAtMost || text.length < 4)) {
    const end = lineEnd(bytes, p);
    if (end < 0 && (!whole || bytes.length - p > MAX_LINE_BYTES)) break;
    const stop = end < 0 ? bytes.length : end;
    starts.push(p);
    text.push(textOf(bytes, p, stop));
    p = nextLine(bytes, stop);
  }
  return joinQuoted(text, starts, Math.min(p, bytes.length));
}

/** Lines that a quote holds together, as one. */
function joinQuoted(text: readonly string[], starts: readonly number[], end: number): Lines {
  const joined: string[] = [];
  const numbers: number[] = [];
  for (let i = 0; i < text.length; i++) {
    numbers.push(i);
    let line = text[i]!;
    if (i < HEADER_WITHIN && hasOpenQuote(line)) {
      const last = closingLine(text, i);
      if (last !== null) {
        line = text.slice(i, last + 1).join(" ");
        i = last;
      }
    }
    joined.push(line);
  }
  return { text: joined, starts: numbers.map((i) => starts[i]!), numbers, end };
}

function closingLine(text: readonly string[], from: number): number | null {
  for (let i = from + 1; i < Math.min(text.length, from + LINES_JOINED); i++) if (hasOpenQuote(text[i]!)) return i;
  return null;
}

function hasOpenQuote(line: string): boolean {
  return line.split('"').length % 2 === 0;
}

export function textOf(bytes: Uint8Array, start: number, end: number): string {
  return repairDoubleEncoding(decodeText(bytes, start, end));
}

export function lineTooLong(file: string, line: number): Failure<RecordingReason> {
  return failure(
    "line-too-long",
    `A line is longer than ${MAX_LINE_BYTES / 1e6} MB: this is no table of rows.`,
    "Export the recording as delimited text with one row a line.",
    { file, line },
  );
}
