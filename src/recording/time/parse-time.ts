/**
 * Clock times, dates and date-times from bytes. Each returns NaN for anything else, so that the caller can call it a word.
 *   clock      19:52:48.092  7:52:48,092 PM  52:48.1 (min:s)  19:52:48:092    -> s since midnight (or since 0:00)
 *   date       2026-11-24  24.11.2026  24/11/26                               -> s since 1970-01-01
 *   date-time  date, then "T" or spaces, then clock, then Z or +01:00 or none  -> s since 1970-01-01 (UTC where a zone stands)
 */
import type { ColumnForm } from "../recording.ts";
import { daysFromDate, isDate } from "./calendar.ts";

/** Order of the parts where the year does not come first. */
export type DateOrder = "day-first" | "month-first";
export type TimeForm = Exclude<ColumnForm, "number">;

const COLON = 58;
const ZERO = 48;

/** Where the last parse ended; a module cell rather than an object, because clocks are parsed once a row. */
let cursor = 0;

export function parseTime(bytes: Uint8Array, start: number, end: number, form: TimeForm, order: DateOrder): number {
  let s = start;
  let e = end;
  while (s < e && isPadding(bytes[s]!)) s++;
  while (e > s && isPadding(bytes[e - 1]!)) e--;
  if (s === e) return Number.NaN;
  if (form === "clock") {
    const seconds = clock(bytes, s, e);
    return cursor === e ? seconds : Number.NaN;
  }
  const day = date(bytes, s, e, order);
  if (Number.isNaN(day)) return Number.NaN;
  if (form === "date") return cursor === e ? day * 86_400 : Number.NaN;
  const afterDate = cursor;
  let at = afterDate;
  while (at < e && (bytes[at] === 32 || bytes[at] === 84 || bytes[at] === 116 || bytes[at] === 44 || bytes[at] === 95))
    at++;
  if (at === afterDate) return Number.NaN;
  const seconds = clock(bytes, at, e);
  if (Number.isNaN(seconds)) return Number.NaN;
  const zone = zoneOffset(bytes, cursor, e);
  return day * 86_400 + seconds - zone;
}

function isPadding(byte: number): boolean {
  return byte === 32 || byte === 34 || byte === 9;
}

/** Digits from `at`; sets the cursor behind them. At most `most` of them; -1 where there is none. */
function digits(bytes: Uint8Array, at: number, end: number, most: number): number {
  let value = 0;
  let i = at;
  while (i < end && i - at < most) {
    const d = bytes[i]! - ZERO;
    if (d < 0 || d > 9) break;
    value = value * 10 + d;
    i++;
  }
  cursor = i;
  return i === at ? -1 : value;
}

function clock(bytes: Uint8Array, start: number, end: number): number {
  const first = digits(bytes, start, end, 4);
  if (first < 0 || bytes[cursor] !== COLON) return Number.NaN;
  const second = digits(bytes, cursor + 1, end, 2);
  if (second < 0 || second > 59) return Number.NaN;
  let seconds = first * 60 + second;
  let twoParts = true;
  if (cursor < end && bytes[cursor] === COLON) {
    const third = digits(bytes, cursor + 1, end, 2);
    if (third < 0 || third > 60) return Number.NaN;
    seconds = first * 3600 + second * 60 + third;
    twoParts = false;
  }
  const mark = bytes[cursor];
  if (cursor < end && (mark === 46 || mark === 44 || (mark === COLON && !twoParts))) {
    const at = cursor + 1;
    const fraction = digits(bytes, at, end, 9);
    if (fraction < 0) return Number.NaN;
    seconds += fraction / 10 ** (cursor - at);
  } else if (twoParts) {
    seconds *= 60; // 19:52 is hours and minutes
    if (first > 23) return Number.NaN;
  }
  return halfDay(bytes, end, seconds);
}

/** " PM" adds twelve hours, " AM" makes 12 into 0. */
function halfDay(bytes: Uint8Array, end: number, seconds: number): number {
  let at = cursor;
  while (at < end && bytes[at] === 32) at++;
  if (at + 2 > end || (bytes[at + 1]! | 32) !== 109) return seconds;
  const letter = bytes[at]! | 32;
  if (letter !== 97 && letter !== 112) return seconds;
  cursor = at + 2;
  const hour12 = seconds >= 43_200 && seconds < 46_800;
  if (letter === 112) return hour12 ? seconds : seconds + 43_200;
  return hour12 ? seconds - 43_200 : seconds;
}

function date(bytes: Uint8Array, start: number, end: number, order: DateOrder): number {
  const a = digits(bytes, start, end, 8);
  const lengthA = cursor - start;
  if (lengthA === 8) {
    const year = Math.floor(a / 10_000);
    const month = Math.floor(a / 100) % 100;
    return isDate(year, month, a % 100) ? daysFromDate(year, month, a % 100) : Number.NaN;
  }
  const mark = bytes[cursor];
  if (a < 0 || (mark !== 45 && mark !== 46 && mark !== 47)) return Number.NaN;
  const b = digits(bytes, cursor + 1, end, 2);
  if (b < 0 || bytes[cursor] !== mark) return Number.NaN;
  const startC = cursor + 1;
  const c = digits(bytes, startC, end, 4);
  if (c < 0) return Number.NaN;
  if (lengthA === 4) return isDate(a, b, c) ? daysFromDate(a, b, c) : Number.NaN;
  const year = cursor - startC === 2 ? 2000 + c : c;
  const [day, month] = order === "day-first" ? [a, b] : [b, a];
  return isDate(year, month, day) ? daysFromDate(year, month, day) : Number.NaN;
}

/** s east of Greenwich; 0 for Z and for none; NaN where anything else follows. */
function zoneOffset(bytes: Uint8Array, start: number, end: number): number {
  let at = start;
  while (at < end && bytes[at] === 32) at++;
  if (at >= end) return 0;
  const sign = bytes[at]!;
  if ((sign === 90 || sign === 122) && at + 1 === end) return 0;
  if (sign !== 43 && sign !== 45) return Number.NaN;
  const hours = digits(bytes, at + 1, end, 2);
  if (hours < 0 || hours > 14) return Number.NaN;
  let minutes = 0;
  if (cursor < end) {
    minutes = digits(bytes, bytes[cursor] === COLON ? cursor + 1 : cursor, end, 2);
    if (minutes < 0 || minutes > 59 || cursor !== end) return Number.NaN;
  }
  return (sign === 43 ? 1 : -1) * (hours * 3600 + minutes * 60);
}
