/** A recording as delimited text, in the ways testers and loggers write them. */
import { findUnit, fromSi, toSi } from "../quantities/index.ts";
import type { RecorderChannel } from "./recorder-channel-table.ts";

export type TableStyle = {
  readonly delimiter: "," | ";" | "\t";
  readonly decimalMark: "." | ",";
  readonly names: "long" | "short";
  /** where the unit stands: "Name [unit]", "Name (unit)", a row of its own, nowhere */
  readonly units: "brackets" | "parentheses" | "row" | "none";
  /** metric, or pounds, inches and Fahrenheit; metric where not given */
  readonly unitSystem?: "metric" | "imperial";
  /** seconds since the start, milliseconds, or clock time from `clockStart` (s since midnight) */
  readonly time: "seconds" | "milliseconds" | "clock";
  readonly clockStart?: number;
  readonly lineEnd?: "\n" | "\r\n";
  /** lines before the header, written behind "# " */
  readonly comments?: readonly string[];
};

export const PLAIN_STYLE: TableStyle = {
  delimiter: ",",
  decimalMark: ".",
  names: "long",
  units: "brackets",
  time: "seconds",
};

export function writeTable(
  channels: readonly RecorderChannel[],
  rows: readonly Float64Array[],
  style: TableStyle,
  resolution: "step" | "loggerStep",
): string {
  if (style.delimiter === "," && style.decimalMark === ",") {
    throw new Error("Assertion failed: a comma cannot be both delimiter and decimal mark");
  }
  const shown = channels.map((channel) => shownIn(channel, style, resolution));
  const lines = [...(style.comments ?? []).map((comment) => `# ${comment}`), ...header(channels, shown, style)];
  const mark = (text: string) => (style.decimalMark === "," ? text.replace(".", ",") : text);
  for (const row of rows) {
    const cells = [timeCell(row[0]!, style, mark)];
    for (let i = 0; i < channels.length; i++) {
      const value = row[i + 1]!;
      cells.push(Number.isNaN(value) ? "" : mark(shown[i]!.of(value).toFixed(shown[i]!.digits)));
    }
    lines.push(cells.join(style.delimiter));
  }
  const end = style.lineEnd ?? "\n";
  return lines.join(end) + end;
}

type Shown = { readonly unit: string; readonly digits: number; readonly of: (value: number) => number };

const IMPERIAL: { readonly [unit: string]: { readonly unit: string; readonly digits: number } } = {
  kPa: { unit: "psi", digits: 2 },
  degC: { unit: "degF", digits: 0 },
  "g/s": { unit: "lb/min", digits: 3 },
  "km/h": { unit: "mph", digits: 0 },
};

/** The value has its steps already: what is left of them in another unit is what a tester would show. */
function shownIn(channel: RecorderChannel, style: TableStyle, resolution: "step" | "loggerStep"): Shown {
  const other = style.unitSystem === "imperial" ? IMPERIAL[channel.unit] : undefined;
  const to = other === undefined ? undefined : findUnit(other.unit);
  const { conversion } = channel;
  if (other === undefined || to === undefined || conversion === null)
    return { unit: channel.unit, digits: decimals(channel[resolution]), of: (value) => value };
  return { ...other, of: (value) => fromSi(toSi(value, conversion), to) };
}

function header(channels: readonly RecorderChannel[], shown: readonly Shown[], style: TableStyle): string[] {
  const timeUnit = style.time === "seconds" ? "s" : style.time === "milliseconds" ? "ms" : "";
  const columns = [
    { name: style.names === "long" ? "Time" : "TIME", unit: timeUnit },
    ...channels.map((c, i) => ({
      name: style.names === "long" ? c.longName : c.shortName,
      unit: printed(shown[i]!.unit),
    })),
  ];
  const named = columns.map(({ name, unit }) => {
    if (unit === "") return name;
    if (style.units === "brackets") return `${name} [${unit}]`;
    if (style.units === "parentheses") return `${name} (${unit})`;
    return name;
  });
  const lines = [named.join(style.delimiter)];
  if (style.units === "row") lines.push(columns.map(({ unit }) => unit).join(style.delimiter));
  return lines;
}

function printed(unit: string): string {
  return unit === "degC" || unit === "degF" ? `°${unit.at(-1)}` : unit === "lambda" ? "" : unit;
}

function timeCell(time: number, style: TableStyle, mark: (text: string) => string): string {
  if (style.time === "milliseconds") return String(Math.round(time * 1000));
  if (style.time === "seconds") return mark(time.toFixed(3));
  const milliseconds = Math.round(((style.clockStart ?? 36_000) + time) * 1000) % 86_400_000;
  const two = (value: number) => String(Math.floor(value)).padStart(2, "0");
  const seconds = milliseconds / 1000;
  const fraction = String(milliseconds % 1000).padStart(3, "0");
  return `${two(seconds / 3600)}:${two((seconds / 60) % 60)}:${two(seconds % 60)}.${fraction}`;
}

/** Digits that show the step: all of a decimal one (0.25 has two), else two for 100/255 and four for 2/65536. */
function decimals(step: number): number {
  for (let digits = 0; digits <= 3; digits++) {
    const scaled = step * 10 ** digits;
    if (Math.abs(scaled - Math.round(scaled)) < 1e-9) return digits;
  }
  return step > 0.01 ? 2 : 4;
}
