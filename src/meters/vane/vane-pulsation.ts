/**
 * What a vane reads when the flow pulsates faster than the flap can follow: it feels the mean of the drag, not of the flow.
 *
 * Equation    reading/truth = sqrt(<u |u|>),  u = 1 + b sin(wt)                                                  (1)
 *             = sqrt(1 + b^2/2)                                                             b <= 1               (2)
 *             <u|u|> = (1 + b^2/2) 2s/pi + (4 b cos s - (b^2/2) sin 2s)/pi,  s = asin(1/b)    b > 1                (3)
 * Symbols     u flow over its mean | b amplitude over the mean
 * Validity    b >= 0 (asserted); pulsation well above the natural frequency of vane-dynamics.ts
 * Source      mean of the torque in vane-law.ts, integrated here             Check  against quadrature, vane.props.test.ts
 */
import { requireWithin } from "../../numerics/index.ts";

export function vanePulsationRatio(amplitude: number): number {
  requireWithin("amplitude", amplitude, 0, Number.MAX_VALUE);
  const b = amplitude;
  const square = 1 + (b * b) / 2;
  if (b <= 1) return Math.sqrt(square);
  const s = Math.asin(1 / b);
  // the part of the turn with u < 0 counts backwards: <u|u|> = <u^2> - 2 <u^2; u < 0>
  const backwards = (Math.PI - 2 * s) * square - 4 * b * Math.cos(s) + (b * b * Math.sin(2 * s)) / 2;
  return Math.sqrt(square - backwards / Math.PI);
}
