/** What the ambient table comes to, in a sentence, and what must be said beside it. */
import type { AmbientSettings } from "./ambient-options.ts";
import type { AmbientSource } from "./ambient-source.ts";
import type { AmbientSheet } from "./result/meter-result-schema.ts";

type Sheet = Omit<AmbientSheet, "headline" | "warnings">;
type Warning = AmbientSheet["warnings"][number];

export const CORRECTS = {
  none: "corrects nothing",
  temperature: "corrects air temperature alone",
  pressure: "corrects pressure alone",
  "temperature-and-pressure": "corrects temperature and pressure",
} as const;

/** below a quarter of a per cent nobody would see it */
const RIGHT_WITHIN = 0.0025;

/** Told at the greatest height asked for, for the compensation that leaves most to say. */
export function ambientHeadline(sheet: Sheet): string {
  const highest = sheet.altitude.at(-1);
  if (highest === undefined || highest.altitude_m === null) return `What air does to a ${sheet.facts.name}.`;
  const height = `${Math.round(highest.altitude_m)} m`;
  if (!["vane", "vortex"].includes(sheet.meterKind)) {
    const ratio = highest.readings[0]?.readingOverTruth ?? null;
    return ratio === null || Math.abs(ratio - 1) <= RIGHT_WITHIN
      ? "Altitude does not move this reading: it senses mass."
      : `At ${height} this reading is ${error(ratio)} because the air is ${ratio < 1 ? "colder" : "warmer"} there; that it is thin does not move it.`;
  }
  const preferred = highest.readings.find((r) => r.compensation === "temperature") ?? highest.readings[0];
  const ratio = preferred?.readingOverTruth ?? null;
  if (preferred === undefined || ratio === null) return `What air does to a ${sheet.facts.name}.`;
  const corrects = CORRECTS[preferred.compensation];
  if (Math.abs(ratio - 1) <= RIGHT_WITHIN)
    return `At ${height} the reading stays right where the engine computer ${corrects}.`;
  return `At ${height} the reading is ${error(ratio)} where the engine computer ${corrects}: ${ratio > 1 ? "rich" : "lean"}.`;
}

function error(ratio: number): string {
  const percent = Math.abs(100 * (ratio - 1));
  return `${percent >= 9.95 ? percent.toFixed(0) : percent.toFixed(1)} % ${ratio > 1 ? "high" : "low"}`;
}

export function ambientWarnings(sheet: Sheet, source: AmbientSource, settings: AmbientSettings): Warning[] {
  const warnings: Warning[] = [];
  const senses = sheet.meterKind;
  if (source.curveAir.assumed) {
    warnings.push({
      code: "curve-air-assumed",
      text: "The air in which the curve was taken is not stated: 20 °C and 101.325 kPa are assumed.",
    });
  }
  if (senses === "hot-wire" && settings.wire === null) {
    warnings.push({
      code: "residual-not-told",
      text: "What is left of the air temperature in a compensated wire is not told: it needs wire diameter, wire length, overheat, bore and flow.",
    });
  }
  if (senses === "hot-wire" && settings.wire !== null) {
    warnings.push({
      code: "wire-untrimmed",
      text: "Told for a bridge that holds its overheat and does no more; makers usually trim a part of this away (common practice, no source).",
    });
  }
  if (senses === "hot-film" && settings.filmCoefficient === null) {
    warnings.push({
      code: "residual-not-told",
      text: "A film keeps a residual temperature error of a few per cent over its range; it is not told without its film coefficient (per cent for a kelvin).",
    });
  }
  if (senses === "vane") {
    const preload =
      settings.preload === null
        ? "a spring preloaded to 30 % of its full torque (common practice, no source)"
        : "the preload stated";
    warnings.push({
      code: "tilt-assumptions",
      text: `Tilt is told for ${preload}, the same torque added at every opening.`,
    });
    if (settings.flapTorque === null)
      warnings.push({
        code: "tilt-by-torque",
        text: "Tilt is told by the torque it adds; with the flap torque (the flap's weight out of balance, over the full spring torque) it is told by the angle.",
      });
  }
  return warnings;
}
