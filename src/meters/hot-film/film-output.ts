/**
 * The output stage of a film meter: its signal as voltage, frequency or period.
 *
 * Equation    output = zero + span s                                                    voltage or frequency   (1)
 *             T = 1/(zero + span s)                                                     period                 (2)
 * Symbols     s signal of film-law.ts, -1..1 | zero, span V or Hz
 * Validity    a frequency must stay above zero over -1..1 for (2) (asserted)
 * Source      definition; a falling frequency and a period that rises with flow both exist: common practice, no source
 */
import { requirePositive } from "../../numerics/index.ts";

export type FilmOutput = {
  readonly kind: "voltage" | "frequency" | "period";
  readonly zero: number;
  readonly span: number;
};

export function filmOutput(output: FilmOutput, signal: number): number {
  const level = output.zero + output.span * signal;
  if (output.kind !== "period") return level;
  requirePositive("frequency", level);
  return 1 / level;
}

export function filmSignalOfOutput(output: FilmOutput, reading: number): number {
  if (output.kind === "period") requirePositive("period", reading);
  const level = output.kind === "period" ? 1 / reading : reading;
  return (level - output.zero) / output.span;
}
