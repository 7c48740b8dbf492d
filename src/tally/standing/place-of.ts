/** Where standing readings stand, in words: "recording 1, 0 to 9 s". */
import type { KeyOnReading } from "../../channels/index.ts";

export function placeOf(readings: readonly KeyOnReading[]): string {
  const first = readings[0]!;
  const more = readings.length > 1 ? ` and ${readings.length - 1} more` : "";
  return `recording ${first.recording + 1}, ${first.start.toFixed(0)} to ${first.end.toFixed(0)} s${more}`;
}
