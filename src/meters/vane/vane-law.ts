/**
 * Spring-loaded vane meter: the flap's angle and its air flow from the balance of torques.
 *
 * Equation    (rho/2) (Q/(C A(a)))^2 S h = M_0 + M_1 a + G sin(t + a_g) - G sin(a_g)                              (1)
 *             hence  q = Q sqrt(rho) = C A(a) sqrt(2 M(a)/(S h))                                                 (2)
 *             m = rho Q = q sqrt(rho)                                                                           (3)
 * Symbols     rho kg/m3 | Q m3/s | a rad flap angle from closed | C A m2 effective area of the gap the flap leaves, a function of a |
 *             S m2 flap area | h m lever from the hinge to the middle of the flap | M_0, M_1 N m, N m/rad spring | G N m weight of the flap
 *             times its lever | t rad tilt about the hinge | a_g rad position of the centre of mass | q kg^0.5 m^1.5/s sensed flow
 * Validity    0 <= a <= a_max, torque > 0 (a tilt that would open the flap without flow is `null`)
 * Assumes     pressure drop of the gap acts on the whole flap; spring balanced by the counterweight when level (t = 0)
 * Source      torque balance, derived here; that the vane reads right only mounted as designed is common practice, no source
 * Check       limits, inverse and monotony tested in vane.props.test.ts
 */
import { evaluateMonotoneCubic, findRoot, type MonotoneCubic, requireWithin } from "../../numerics/index.ts";

export type Vane = {
  /** m2, effective (C A) against angle in rad; zero or a small leak at 0, rising */
  readonly effectiveArea: MonotoneCubic;
  readonly flapArea: number;
  readonly lever: number;
  /** N m at angle 0 */
  readonly springPreload: number;
  /** N m/rad */
  readonly springRate: number;
  readonly maximumAngle: number;
  /** N m: weight of flap and counterweight out of balance times its lever */
  readonly gravityTorque: number;
  /** rad, where the centre of mass stands when the flap is closed and the meter level */
  readonly gravityAngle: number;
};

/** Torque that holds the flap at this angle; tilt in rad about the hinge, positive helping the spring. */
export function vaneTorque(vane: Vane, angle: number, tilt = 0): number {
  const level = Math.sin(vane.gravityAngle);
  return (
    vane.springPreload + vane.springRate * angle + vane.gravityTorque * (Math.sin(tilt + vane.gravityAngle) - level)
  );
}

/** (2): the flow Q sqrt(rho) that holds the flap at this angle; null where the tilt has taken all torque away. */
export function vaneSensedFlow(vane: Vane, angle: number, tilt = 0): number | null {
  requireWithin("flap angle", angle, 0, vane.maximumAngle);
  const torque = vaneTorque(vane, angle, tilt);
  if (torque < 0) return null;
  return evaluateMonotoneCubic(vane.effectiveArea, angle) * Math.sqrt((2 * torque) / (vane.flapArea * vane.lever));
}

/** The inverse of (2). Beyond the flap's stop the stop is returned with `atStop`. */
export function vaneAngle(
  vane: Vane,
  sensedFlow: number,
  tilt = 0,
): { readonly angle: number; readonly atStop: boolean } {
  requireWithin("sensed flow", sensedFlow, 0, Number.MAX_VALUE);
  const excess = (angle: number): number => (vaneSensedFlow(vane, angle, tilt) ?? 0) - sensedFlow;
  if (excess(0) >= 0) return { angle: 0, atStop: excess(0) > 0 };
  if (excess(vane.maximumAngle) <= 0) return { angle: vane.maximumAngle, atStop: excess(vane.maximumAngle) < 0 };
  const outcome = findRoot(excess, { low: 0, high: vane.maximumAngle });
  if (outcome.status !== "found") throw new Error(`Assertion failed: no flap angle for ${sensedFlow}`);
  return { angle: outcome.root, atStop: false };
}

/** (3), kg/s */
export function vaneMassFlow(vane: Vane, angle: number, density: number): number | null {
  const sensed = vaneSensedFlow(vane, angle);
  return sensed === null ? null : sensed * Math.sqrt(density);
}
