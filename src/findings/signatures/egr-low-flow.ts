/**
 * Exhaust gas that recirculates less than the command asks: clogged passage, valve that does not open.
 *
 * Equation    E -> r E where the valve is commanded open: dP = ln((1 + r e)/(1 + e)), e = E/m as usual
 * Symbols     r share of the expected flow that remains | e expected recirculated over fresh air, ln(1 + e) = 0.8 of the scale that is
 *             believed of this kind of engine (the mean of a half-normal)
 * Limits      nothing where the valve is shut or no command was recorded: nobody can then say what to expect
 * Note        what this really does is to narrow the spread of recirculation by r; the weighing does that (`recirculation`), and
 *             the shift above is its mean
 * Source      mean of a half-normal sqrt(2/pi)
 */
import { commandedShut, findReading, mayRecirculate, type TallyModel } from "../../tally/index.ts";
import { type Law, ONE_SHAPE } from "../cause.ts";
import { isPressure, shiftOf } from "./prediction.ts";

const MEAN_OF_HALF_NORMAL = Math.sqrt(2 / Math.PI);

export const egrLowFlow: Law = {
  id: "egr-low-flow",
  applies: (model) => mayRecirculate(model.engine),
  shapes: () => ONE_SHAPE,
  predict: (model, share) => {
    const { egrDiesel, egrSpark } = model.assumptions;
    const scale = model.engine.ignition === "compression" ? egrDiesel : egrSpark;
    const usual = Math.expm1(MEAN_OF_HALF_NORMAL * scale);
    const shift = Math.log1p(share * usual) - Math.log1p(usual);
    const plain = shiftOf(model, isPressure, (i) => (commandedOpen(model, i) ? shift : 0));
    return model.points.some((_, i) => commandedOpen(model, i)) ? { ...plain, recirculation: share } : plain;
  },
};

function commandedOpen({ points }: TallyModel, i: number): boolean {
  const point = points[i]!;
  const told = findReading(point, "egrCommanded", null) ?? findReading(point, "egrPosition", null);
  return told !== null && !commandedShut(point);
}
