/**
 * The fast half of the two readers: rows of plain numbers and times straight from the bytes into typed columns, without
 * a string in between. A line with anything else in it is left to the careful half; both give the same values
 * (property test). A number of up to 15 digits is an exact integer divided by an exact power of ten, so the one rounding
 * of the division gives the nearest double (Clinger 1990, from memory); longer numbers go through Number().
 */
import { QUALITY } from "../../quantities/index.ts";
import { parseTime, type TimeForm } from "../time/parse-time.ts";
import type { ColumnStore } from "./column-store.ts";
import type { Layout } from "./layout.ts";
import { CR, LF, textOf } from "./line.ts";
import { writeCell } from "./write-cell.ts";

/** Number of the line at the position. */
export type ScanState = { line: number };

const POWERS = Float64Array.from({ length: 16 }, (_, i) => 10 ** i);
/** Kinds of columns. */
const NUMBER = 0;
const TIME = 1;
const WORDS = 2;
const SPACE = 32;
const TAB = 9;
const ZERO = 48;
const QUOTE = 34;
const NUL = 0;

/**
 * Takes lines from `start` up to `end`, which must stand right behind a line ending. Returns the start of the first line
 * that needs care, or `end`.
 */
export function scanRows(
  bytes: Uint8Array,
  start: number,
  end: number,
  layout: Layout,
  store: ColumnStore,
  state: ScanState,
): number {
  const count = layout.columns.length;
  const delimiter = layout.delimiter.charCodeAt(0);
  const spaced = delimiter === SPACE;
  const kinds = Uint8Array.from(layout.columns, (column) =>
    column.wordy ? WORDS : column.form === "number" ? NUMBER : TIME,
  );
  const marks = Uint8Array.from(layout.columns, (column) => column.format.decimal.charCodeAt(0));
  const glued = layout.columns.map((column) => spellings(column.format.glued));
  const { values, quality } = store;
  const above = new Float64Array(count).fill(-1); // where the word of the row above begins
  let p = start;
  while (p < end) {
    const lineStart = p;
    const first = bytes[p];
    if (first === LF || first === CR) {
      p += first === CR && bytes[p + 1] === LF ? 2 : 1;
      state.line++;
      continue;
    }
    store.ensureRow();
    const row = store.rows;
    let column = 0;
    let numbers = 0;
    let taken = false;
    for (; column <= count; column++) {
      // One cell more than there are columns is a trailing delimiter if nothing stands in it.
      const kind = column < count ? kinds[column] : NUMBER;
      let byte = bytes[p]!;
      while (byte === SPACE || (spaced && byte === TAB)) byte = bytes[++p]!;
      const quoted = byte === QUOTE;
      if (quoted) byte = bytes[++p]!;
      let value = Number.NaN;
      let missing = false;
      if (kind !== NUMBER && byte !== delimiter && byte !== LF && byte !== CR && byte !== QUOTE) {
        const from = p;
        while ((byte !== delimiter || quoted) && byte !== LF && byte !== CR && byte !== QUOTE && byte !== NUL)
          byte = bytes[++p]!;
        if (quoted ? byte !== QUOTE : byte === QUOTE || byte === NUL) break;
        if (kind === TIME) {
          value = parseTime(bytes, from, p, layout.columns[column]!.form as TimeForm, layout.dateOrder);
          if (Number.isNaN(value)) break;
        } else if (sameBytes(bytes, above[column]!, from, p)) store.repeatAbove(column, row);
        else writeCell(textOf(bytes, from, p), layout.columns[column]!, layout, store, column, row);
        above[column] = from;
      } else {
        const from = p;
        const negative = byte === 45;
        if (negative || byte === 43) byte = bytes[++p]!;
        const digitsFrom = p;
        let mantissa = 0;
        let digit = byte - ZERO;
        while (digit >= 0 && digit <= 9) {
          mantissa = mantissa * 10 + digit;
          byte = bytes[++p]!;
          digit = byte - ZERO;
        }
        let digits = p - digitsFrom;
        let scale = 0;
        if (byte === marks[column] && (byte !== delimiter || quoted)) {
          byte = bytes[++p]!;
          const fractionFrom = p;
          digit = byte - ZERO;
          while (digit >= 0 && digit <= 9) {
            mantissa = mantissa * 10 + digit;
            byte = bytes[++p]!;
            digit = byte - ZERO;
          }
          scale = p - fractionFrom;
          digits += scale;
          if (digits === 0) break;
        }
        if (digits === 0) {
          if (p !== from) break;
          missing = true;
          if (kind === WORDS) above[column] = -1;
        } else if (digits <= 15 && (byte | 32) !== 101) {
          value = mantissa / POWERS[scale]!;
          if (negative) value = -value;
        } else {
          p = numberEnd(bytes, p);
          byte = bytes[p]!;
          value = longNumber(bytes, from, p);
          if (!Number.isFinite(value)) break;
        }
        if (column < count && glued[column]!.length > 0) {
          p = behindUnit(bytes, p, glued[column]!);
          byte = bytes[p]!;
        }
      }
      if (quoted) {
        while (byte === SPACE) byte = bytes[++p]!;
        if (byte !== QUOTE) break;
        byte = bytes[++p]!;
      }
      const spaceBehind = byte === SPACE || byte === TAB;
      while (byte === SPACE || (spaced && byte === TAB)) byte = bytes[++p]!;
      const ends = byte === LF || byte === CR;
      if (!ends && (spaced ? !spaceBehind : byte !== delimiter)) break;
      if (column === count) {
        taken = ends && missing;
        break;
      }
      if (missing) {
        values[column]![row] = Number.NaN;
        quality[column]![row] = QUALITY.missing;
      } else if (kind !== WORDS) {
        values[column]![row] = value; // a fresh row is good by default
        numbers++;
      }
      if (ends) {
        taken = column === count - 1;
        break;
      }
      if (!spaced) p++;
    }
    // A line without a number or time may be a header or a remark.
    if (!taken || numbers === 0) {
      store.clearRow();
      return lineStart;
    }
    store.lines[row] = state.line;
    store.rows = row + 1;
    state.line++;
    p += bytes[p] === CR && bytes[p + 1] === LF ? 2 : 1;
  }
  return p;
}

/** A unit glued to numbers, in the bytes of either encoding; none where there is none. */
function spellings(unit: string): readonly (readonly number[])[] {
  if (unit === "") return [];
  const codes = Array.from(unit, (c) => c.charCodeAt(0));
  const utf8 = codes.flatMap((code) => (code < 0x80 ? [code] : [0xc0 | (code >> 6), 0x80 | (code & 0x3f)]));
  return codes.every((code) => code < 0x800) ? [utf8, ...(codes.every((code) => code < 0x100) ? [codes] : [])] : [];
}

/** Position behind the unit, if it stands at `p` or after spaces; else `p`. */
function behindUnit(bytes: Uint8Array, p: number, units: readonly (readonly number[])[]): number {
  let at = p;
  while (bytes[at] === SPACE) at++;
  const found = units.find((unit) => unit.every((byte, i) => bytes[at + i] === byte));
  return found === undefined ? p : at + found.length;
}

/** Whether the bytes up to `to` repeat those of the cell above, up to its end. */
function sameBytes(bytes: Uint8Array, above: number, from: number, to: number): boolean {
  if (above < 0) return false;
  const shift = above - from;
  for (let i = from; i < to; i++) if (bytes[i] !== bytes[i + shift]) return false;
  const behind = bytes[to + shift]!;
  return behind === bytes[to] || behind === LF || behind === CR;
}

/** End of an exponent that begins at `p`, or `p`. */
function numberEnd(bytes: Uint8Array, p: number): number {
  let i = p;
  if ((bytes[i]! | 32) !== 101) return i;
  i++;
  if (bytes[i] === 43 || bytes[i] === 45) i++;
  const from = i;
  while (bytes[i]! >= ZERO && bytes[i]! <= 57) i++;
  return i === from ? p : i;
}

function longNumber(bytes: Uint8Array, from: number, end: number): number {
  let text = "";
  for (let i = from; i < end; i++) text += bytes[i] === 44 ? "." : String.fromCharCode(bytes[i]!);
  return Number(text);
}
