/**
 * Mean reading of a film meter in a pulsating stream: it knows the direction, so what is left is its bend and its lag.
 *
 * Equation    reading = <f(s(m))> when linearised at once, f(<s(m)>) when the signal is averaged first            (1)
 *             the film's lag takes b to b/sqrt(1 + (w tau)^2) before (1)                                         (2)
 * Symbols     s signal, f its inverse | b amplitude over the mean | w rad/s | tau s
 * Validity    mean flow > 0 (asserted). Linearised at once and without lag the reading is exact through reversal
 * Source      definition of the mean                                         Check  hot-film.props.test.ts
 */
import { lagResponse, requirePositive } from "../../numerics/index.ts";
import { type FilmLaw, filmMassFlow, filmSignal } from "./film-law.ts";

const STEPS = 1024;

export function filmPulsationRatio(
  law: FilmLaw,
  stream: {
    readonly meanFlow: number;
    readonly amplitude: number;
    readonly frequency?: number;
    readonly timeConstant?: number;
  },
  average: "signal" | "flow",
): number {
  const { meanFlow, amplitude, frequency = 0, timeConstant = 0 } = stream;
  requirePositive("mean flow", meanFlow);
  if (average === "flow") return 1;
  const felt = amplitude * lagResponse(frequency, timeConstant).gain;
  let sum = 0;
  for (let i = 0; i < STEPS; i++) {
    sum += filmSignal(law, meanFlow * (1 + felt * Math.sin((2 * Math.PI * (i + 0.5)) / STEPS)));
  }
  const read = filmMassFlow(law, sum / STEPS);
  if (read === null) throw new Error("Assertion failed: a mean signal lies inside the film's range");
  return read / meanFlow;
}
