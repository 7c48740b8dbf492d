/**
 * A filter or duct that takes more pressure than it should.
 *
 * Equation    standing: (p_a - p) at full load beyond a sound filter's = d, at the largest flow
 *             a meter that senses density stands behind the filter: dM = -k ln(1 - (d/p_a)(m/m_max)^2)
 *             the throttle witness believes in the pressure before it: dH of throttle-witness at d (m/m_max)^2 less
 * Symbols     d Pa lost at the largest flow beyond what a sound filter and duct take | k of meters/sensed-density
 * Limits      grows with the flow squared; wire, film, pressure, fuel and trims stay true. Where no point at full load with the
 *             throttle open was recorded, and on a boosted engine, it is not seen
 * Source      turbulent restriction, dp = k m^2/rho
 */
import { sensedDensityExponent } from "../../meters/index.ts";
import { type Law, ONE_SHAPE } from "../cause.ts";
import { isMeter, isThrottle, shiftsOf } from "./prediction.ts";
import { throttleByUpstream } from "./throttle-witness.ts";

/** of the ambient pressure: beyond, no engine would pull its largest flow */
const MOST = 0.7;

export const intakeRestricted: Law = {
  id: "intake-restricted",
  applies: () => true,
  shapes: () => ONE_SHAPE,
  predict: (model, drop) => {
    const { physics, engine } = model;
    const kind = engine.meters[0]?.kind;
    const exponent = kind === undefined ? 0 : sensedDensityExponent(kind);
    const lost = (i: number) => drop * (physics.air[i]! / physics.largestFlow) ** 2;
    const onDensity = (i: number) => -Math.log1p(-Math.min(MOST, lost(i) / physics.barometer[i]!));
    return shiftsOf(
      model,
      [
        [(w) => isMeter(w) && exponent > 0, (i) => exponent * onDensity(i)],
        [isThrottle, (i) => throttleByUpstream(model, i, lost(i))],
      ],
      ({ kind: standing }) => (standing === "full-load-pressure-drop" ? drop / 1000 : 0),
    );
  },
};
