/**
 * Valves that open and close later or sooner than drawn: a belt or chain off by a tooth, a phaser that hangs.
 *
 * Equation    eta -> eta (1 - t c (1 - N/N_x)),  dP = -ln of that factor
 * Symbols     t rad late (crank) | c loss of trapped volume a rad: 0.006 a degree | N 1/s; N_x where early and late fill alike
 * Limits      late: pressure reads high at idle and low speed, where the piston pushes charge back out, and low above N_x, where the
 *             ram of the column fills longer; early the other way
 * Validity    |t| within 30 degrees; the factor held between 0.3 and 2
 * Source      c of the order of d/dt (1 - cos)/2 of the piston's way 50 to 60 degrees after its lowest point; N_x near 0.65 of the
 *             largest speed (a grid about it): common practice, no source
 */
import type { Law } from "../cause.ts";
import { isPressure, shiftOf } from "./prediction.ts";

/** 1/rad */
const LOSS = (0.006 * 180) / Math.PI;
/** 1/s */
const EVEN_AT = { spark: 65, compression: 48 } as const;

export const valveTimingShifted: Law = {
  id: "valve-timing-shifted",
  applies: () => true,
  shapes: ({ engine }) => {
    const even = EVEN_AT[engine.ignition];
    return [
      { value: 0.75 * even, weight: 0.3 },
      { value: even, weight: 0.4 },
      { value: 1.3 * even, weight: 0.3 },
    ];
  },
  predict: (model, late, evenAt) => {
    const { speed } = model.physics;
    return shiftOf(
      model,
      isPressure,
      (i) => -Math.log(Math.min(2, Math.max(0.3, 1 - late * LOSS * (1 - speed[i]! / evenAt)))),
    );
  },
};
