/** Numbers and places in words, for evidence and headlines. */
import type { OperatingPoint } from "../../channels/index.ts";
import type { TallyModel } from "../../tally/index.ts";

/** "13 % low", "0.4 % high", "level with the others" */
export function lowOrHigh(departure: number): string {
  const percent = 100 * Math.expm1(departure);
  if (Math.abs(percent) < 0.25) return "level with the others";
  return `${percentNumber(Math.abs(percent))} % ${percent < 0 ? "low" : "high"}`;
}

/** "+2.1 %", with a true minus sign */
export function signedPercent(departure: number): string {
  const percent = 100 * Math.expm1(departure);
  if (Math.abs(percent) < 0.05) return "0 %";
  return `${percent < 0 ? "−" : "+"}${percentNumber(Math.abs(percent))} %`;
}

export function percentNumber(percent: number): string {
  return percent >= 10 ? percent.toFixed(0) : percent.toFixed(1);
}

/** Two or three digits that matter. */
export function figure(value: number): string {
  const size = Math.abs(value);
  const text = size >= 100 ? value.toFixed(0) : size === 0 ? "0" : String(Number(value.toPrecision(size < 1 ? 2 : 3)));
  return text.replace("-", "−");
}

/** Where the engine was: "at idle", "at full load", "near 2,500 rev/min and 45 kPa" */
export function placeOf(model: TallyModel, points: readonly number[]): string {
  const states = (state: OperatingPoint["states"][number]) =>
    points.filter((i) => model.points[i]!.states.includes(state)).length / points.length;
  if (states("idle") >= 0.6) return "at idle";
  if (states("full-load") >= 0.6) return "at full load";
  if (states("fuel-cut") >= 0.6) return "on overrun";
  const speed = median(points.map((i) => model.physics.speed[i]! * 60));
  const pressure = median(points.map((i) => model.physics.pressure[i]! / 1000));
  const rounded = (Math.round(speed / 100) * 100).toLocaleString("en-GB");
  return `near ${rounded} rev/min${Number.isFinite(pressure) ? ` and ${pressure.toFixed(0)} kPa` : ""}`;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.length === 0 ? Number.NaN : sorted[sorted.length >> 1]!;
}

export const WITNESS_NAMES: { readonly [id: string]: string } = {
  meter: "the air meter",
  "meter-2": "the second air meter",
  pressure: "manifold pressure",
  throttle: "the throttle",
  fuel: "the fuel side",
  "fuel-bank1": "the fuel side of bank 1",
  "fuel-bank2": "the fuel side of bank 2",
  exhaust: "the exhaust",
};

/** "a, b and c" */
export function listed(items: readonly string[], last = "and"): string {
  return items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} ${last} ${items[items.length - 1]}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** "Air enters ..." -> "air enters ...", but not "EGR ..." */
export function lower(text: string): string {
  return /^[A-Z][^A-Z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
