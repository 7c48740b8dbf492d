/** What a number in a time column means: its unit as written, else told from its size and its steps. */
import { findUnit } from "../../quantities/index.ts";

export type TimeScale = {
  /** s for one */
  readonly factor: number;
  readonly unit: string;
  /** false: guessed from size and steps */
  readonly stated: boolean;
};

const DAY = 86_400;

/** `first` is the first stamp, `step` the median positive step between stamps, both as written. */
export function timeScaleOf(unitText: string | null, header: string, first: number, step: number): TimeScale {
  const stated = unitText === null ? null : scaleOfUnit(unitText);
  if (stated !== null) return stated;
  const named = /(?:^|[\s_.-])(ms|msec|millis|us|usec|ns|sec|secs|seconds|s|min|milliseconds|microseconds)$/i.exec(
    header,
  );
  const inName = named === null ? null : scaleOfUnit(named[1]!);
  if (inName !== null) return inName;
  // Counts since 1970 have one of four sizes in this century; days since 1900 lie between 36,526 (2000) and 73,050 (2100).
  for (const [factor, unit] of [
    [1, "s"],
    [1e-3, "ms"],
    [1e-6, "us"],
    [1e-9, "ns"],
  ] as const) {
    const seconds = first * factor;
    if (seconds > 9.4e8 && seconds < 4.1e9) return { factor, unit: `${unit} since 1970`, stated: false };
  }
  if (first > 36_526 && first < 73_050 && step < 0.05) return { factor: DAY, unit: "day", stated: false };
  if (first >= 0 && first < 1 && step < 1e-3 && step > 1e-8) return { factor: DAY, unit: "day", stated: false };
  // Whole steps of 20 or more: rows every 20 s and more are no recording of a running engine, every 20 ms and more are.
  if (Number.isInteger(step) && step >= 20) {
    return step >= 5_000 ? { factor: 1e-6, unit: "us", stated: false } : { factor: 1e-3, unit: "ms", stated: false };
  }
  return { factor: 1, unit: "s", stated: false };
}

function scaleOfUnit(text: string): TimeScale | null {
  const unit = findUnit(text.trim());
  if (unit?.dimension === "time") return { factor: unit.factor, unit: unit.symbol, stated: true };
  const word = text.trim().toLowerCase();
  if (/^(d|days?|tage?|jours?|dias?)$/.test(word)) return { factor: DAY, unit: "day", stated: true };
  if (word === "ns" || word === "nsec") return { factor: 1e-9, unit: "ns", stated: true };
  if (/^(millisecondes|milisegundos|millisekunden|milissegundos)$/.test(word))
    return { factor: 1e-3, unit: "ms", stated: true };
  if (/^(microseconds?|mikrosekunden)$/.test(word)) return { factor: 1e-6, unit: "us", stated: true };
  return null;
}
