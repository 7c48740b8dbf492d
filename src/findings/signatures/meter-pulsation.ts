/**
 * A meter in a stream that pulsates: wide open at low speed, where the pulses of the cylinders reach it.
 *
 * Equation    dM = ln(1 + w g),  g = exp(-(ln(N/N_p)/b)^2) ramp(p/p_a; 0.75, 0.95)
 * Symbols     w relative error at its worst | N 1/s; N_p where the intake resonates (a grid), b width in ln N
 * Limits      nothing at idle, at part throttle and at high speed. Before the stream reverses a wire averaged before it is linearised
 *             under-reads, (<u^n>)^(1/n), and a vane over-reads, sqrt(<u|u|>); both grow with the square of the amplitude; a wire in
 *             a reversing stream over-reads, <|u|>; a vortex meter locks in, either way (meters/). So a vane never under-reads here
 * Source      the means of meters/hot-wire/pulsation-means and meters/vane/vane-pulsation; where the band lies and how wide it is
 *             depends on the pipes: common practice, no source
 */
import type { Law } from "../cause.ts";
import { hasMeter, isMeter, ramp, shiftOf } from "./prediction.ts";

const WIDTH = 0.4;
const LEAST = 0.05;

export const meterPulsation: Law = {
  id: "meter-pulsation",
  applies: hasMeter,
  shapes: () => [
    { value: 19, weight: 0.3 },
    { value: 26, weight: 0.4 },
    { value: 36, weight: 0.3 },
  ],
  /** no vane under-reads, so that side keeps its smallest sizes alone */
  most: ({ engine }, sign) => (sign < 0 && engine.meters.some((m) => m.kind === "vane") ? 0 : Infinity),
  predict: (model, worst, resonance) => {
    const { speed, pressure, barometer } = model.physics;
    return shiftOf(model, isMeter, (i) => {
      const open = ramp(pressure[i]! / barometer[i]!, 0.75, 0.95);
      if (open === 0) return 0;
      const near = Math.exp(-((Math.log(speed[i]! / resonance) / WIDTH) ** 2));
      return Math.log(Math.max(LEAST, 1 + worst * near * open));
    });
  },
};
