/** Which columns tell the time: by their form, by their name, by a unit of time; never by a lucky ramp alone. */
import { findUnit, QUALITY } from "../../quantities/index.ts";
import type { RawColumn } from "../recording.ts";

export type TimeSource =
  | { readonly kind: "date-time" | "clock"; readonly column: RawColumn; readonly date: RawColumn | null }
  | { readonly kind: "number"; readonly column: RawColumn }
  | { readonly kind: "sample-number"; readonly column: RawColumn };

const TIME_WORDS = new Set(
  [
    "time timestamp clock elapsed elapsedtime logtime seconds second sec secs s ms msec millis milliseconds us t epoch utc stamp",
    "log recording record measurement relative abs absolute offset start since from system local date of day the x axis ns unix",
    "zeit zeitstempel uhrzeit zeitpunkt messzeit sekunden sek ab beginn seit datum laufzeit zeitachse aufzeichnung",
    "temps heure horodatage duree depuis debut date ecoule secondes",
    "tiempo hora fecha marca transcurrido segundos desde inicio de",
    "tempo hora data instante carimbo decorrido orario",
    "timestep ts tstamp datetime and und et y e",
  ].flatMap((line) => line.split(" ")),
);
const SURELY =
  /time|clock|elapsed|sec|epoch|utc|stamp|zeit|uhr|datum|date|temps|heure|horo|tiempo|hora|fecha|tempo|^t$|^ts$|^ms$|^s$|^us$/;
const SAMPLE_WORDS =
  /^(sample|samples|sample ?(no|nr|number|index|#)|index|idx|no|nr|#|row|zeile|lfd ?nr|record ?(no|nr|number)?|messpunkt|punkt|muestra|point|ligne)\.?$/;

export function findTimeSource(columns: readonly RawColumn[]): TimeSource | null {
  const timed = columns.filter((column) => column.form !== "number" && mostlyGood(column));
  const dateTime = timed.find((column) => column.form === "date-time");
  const number = columns.filter((column) => isNumberOfTime(column) && mostlyGood(column) && mostlyRising(column));
  const finest = number.toSorted((a, b) => distinctShare(b) - distinctShare(a) || a.position - b.position)[0];
  if (dateTime !== undefined && (finest === undefined || distinctShare(dateTime) >= 0.9)) {
    return { kind: "date-time", column: dateTime, date: null };
  }
  const clock = timed.find((column) => column.form === "clock" && (isTimeName(column) || column.position <= 3));
  if (clock !== undefined && (finest === undefined || distinctShare(clock) >= 0.9 * distinctShare(finest))) {
    return { kind: "clock", column: clock, date: timed.find((column) => column.form === "date") ?? null };
  }
  if (finest !== undefined) return { kind: "number", column: finest };
  if (dateTime !== undefined) return { kind: "date-time", column: dateTime, date: null };
  const sample = columns.find(
    (column) => SAMPLE_WORDS.test(plain(column.header)) && mostlyGood(column) && countsUp(column),
  );
  return sample === undefined ? null : { kind: "sample-number", column: sample };
}

function isNumberOfTime(column: RawColumn): boolean {
  if (column.form !== "number") return false;
  if (column.unitText !== null && findUnit(column.unitText) !== undefined && !isTimeUnit(column.unitText)) return false;
  return (
    isTimeName(column) ||
    (column.position === 1 &&
      column.unitText !== null &&
      isTimeUnit(column.unitText) &&
      plain(column.header).length < 3)
  );
}

/** Every word of the name is about time: "Time since start" is, "Engine run time" and "Injection time" are not. */
function isTimeName(column: RawColumn): boolean {
  const words = plain(column.header)
    .split(" ")
    .filter((word) => word !== "");
  return words.length > 0 && words.every((word) => TIME_WORDS.has(word)) && words.some((word) => SURELY.test(word));
}

function plain(header: string): string {
  return header
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase()
    .replace(/[^a-z0-9#]+/g, " ")
    .trim();
}

function isTimeUnit(text: string): boolean {
  return findUnit(text)?.dimension === "time" || /^(d|day|days|tage?|ns|hh:mm|h:m:s|hms)/i.test(text.trim());
}

function mostlyGood(column: RawColumn): boolean {
  let good = 0;
  for (const code of column.quality) if (code === QUALITY.good) good++;
  return good > 0.5 * column.quality.length;
}

function mostlyRising(column: RawColumn): boolean {
  let rising = 0;
  let falling = 0;
  let last = Number.NaN;
  for (const value of column.values) {
    if (value >= last) rising++;
    else if (value < last) falling++;
    if (!Number.isNaN(value)) last = value;
  }
  return rising > 0 ? falling <= 1 + 0.1 * (rising + falling) : column.values.length === 1;
}

/** Most steps are the same: a count, not a measurement. */
function countsUp(column: RawColumn): boolean {
  const steps = new Map<number, number>();
  for (let i = 1; i < column.values.length; i++) {
    const step = column.values[i]! - column.values[i - 1]!;
    steps.set(step, (steps.get(step) ?? 0) + 1);
  }
  const [step, count] = [...steps].reduce((a, b) => (b[1] > a[1] ? b : a), [0, 0]);
  return step > 0 && count >= 0.6 * (column.values.length - 1);
}

function distinctShare(column: RawColumn): number {
  let different = 0;
  let last = Number.NaN;
  for (const value of column.values) {
    if (value !== last && !Number.isNaN(value)) different++;
    last = value;
  }
  return different / Math.max(1, column.values.length);
}
