/**
 * Faults of fuel pressure.
 *
 * Equation    fuel-supply-limited       s = 1 - l max(0, (f - f_0)/(f_1 - f_0)),  dF = -ln s
 *             fuel-pressure-reference   dF = -1/2 ln(1 + (d/q)(p_a - p)/(p_a - p_idle)): regulator hose off or torn
 * Symbols     s delivered/commanded | f kg/s fuel, f_0 where delivery begins to fall (a grid of shares of f_1), f_1 at the largest flow, l loss
 *             there | d Pa too high at idle, q Pa across the injector | p_a ambient, p manifold
 * Limits      the first is nothing below f_0 and lean beyond; the second rich at idle, right at full load, lean under boost
 * Source      flow grows with the root of the pressure [heywood1988] section 7.3; the straight fall of delivery is common practice,
 *             no source
 */
import type { Law } from "../cause.ts";
import { ONE_SHAPE } from "../cause.ts";
import { fuelAt, hasFuelControl, isFuelSide, shiftOf } from "./prediction.ts";

const LEAST_DELIVERED = 0.1;

export const fuelSupplyLimited: Law = {
  id: "fuel-supply-limited",
  applies: hasFuelControl,
  shapes: () => [0.25, 0.4, 0.55, 0.7, 0.85].map((value) => ({ value, weight: 0.2 })),
  predict: (model, loss, share) => {
    const most = largestFuel(model);
    return shiftOf(model, isFuelSide, (i) => {
      const beyond = (fuelAt(model, i) / most - share) / (1 - share);
      return beyond <= 0 ? 0 : -Math.log(Math.max(LEAST_DELIVERED, 1 - loss * beyond));
    });
  },
  otherSizes: (model, _, share) => [
    {
      name: "fuel where delivery begins to fall",
      unit: "g/s",
      value: 1000 * share * largestFuel(model),
      first: true,
      steps: true,
    },
  ],
};

function largestFuel(model: Parameters<typeof fuelAt>[0]): number {
  let most = 0;
  for (let i = 0; i < model.points.length; i++) {
    const fuel = fuelAt(model, i);
    if (fuel > most) most = fuel;
  }
  return most;
}

/** Pa across the injector, taken where the engine file does not say: common practice, no source */
const INJECTOR_PRESSURE = 300e3;
/** Pa of a warm idle, where the recording has none */
const IDLE_PRESSURE = 33e3;

export const fuelPressureReference: Law = {
  id: "fuel-pressure-reference",
  // A regulator without a hose, and one in the tank of a direct injection, has nothing to lose.
  applies: ({ engine }) =>
    engine.ignition === "spark" && engine.injection !== "direct" && engine.injectors?.pressureReference !== "ambient",
  shapes: () => ONE_SHAPE,
  predict: (model, excess) => {
    const { pressure, barometer } = model.physics;
    const across = model.engine.injectors?.atPressure ?? INJECTOR_PRESSURE;
    const vacuum = idleVacuum(model);
    return shiftOf(model, isFuelSide, (i) => {
      const added = ((excess / across) * (barometer[i]! - pressure[i]!)) / vacuum;
      return -0.5 * Math.log(Math.max(LEAST_DELIVERED, 1 + added));
    });
  },
};

/** Pa below ambient at idle */
function idleVacuum({ points, physics }: Parameters<typeof fuelAt>[0]): number {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < points.length; i++) {
    if (!points[i]!.states.includes("idle") || !(physics.pressure[i]! < 0.8 * physics.barometer[i]!)) continue;
    sum += physics.barometer[i]! - physics.pressure[i]!;
    count += 1;
  }
  return count > 0 ? sum / count : Math.max(20e3, (physics.barometer[0] ?? 100e3) - IDLE_PRESSURE);
}
