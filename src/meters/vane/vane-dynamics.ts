/**
 * How a vane follows the flow: a second-order system with a damping chamber.
 *
 * Equation    I a'' + D a' + M(a) = (q/(C A(a)))^2 S h/2 + (1 - c) S h p'                                         (1)
 *             linear around a_0:  I x'' + D x' + k x = ...,  k = dM/da + (q^2 S h) A'/(C^2 A^3)                    (2)
 *             w_n = sqrt(k/I),  zeta = D/(2 sqrt(k I))                                                          (3)
 * Symbols     I kg m2 | D N m s/rad damping chamber | q = Q sqrt(rho) | p' Pa pulsation of the pressure behind the flap | c share of it
 *             that the compensation flap takes away, 1 for flaps of equal area and lever
 * Validity    0 <= a <= a_max: at the stops the speed is set to zero
 * Numerics    classical Runge-Kutta of fourth order with the step of the caller; stable below about 2.5/w_n
 * Source      torque balance, derived here. The compensation flap and its chamber: common practice, no source
 * Check       linear step response in closed form, vane.props.test.ts
 */
import { evaluateMonotoneCubic, requirePositive, slopeOfMonotoneCubic } from "../../numerics/index.ts";
import { type Vane, vaneTorque } from "./vane-law.ts";

export type MovingVane = Vane & {
  readonly inertia: number;
  readonly damping: number;
  /** 0 to 1 */
  readonly compensation: number;
};

export type VaneState = { readonly angle: number; readonly speed: number };

export type VaneForcing = { readonly sensedFlow: number; readonly pulsation: number; readonly tilt?: number };

/** One step of `duration` seconds; forcing given at start, middle and end. */
export function stepVane(
  vane: MovingVane,
  state: VaneState,
  duration: number,
  forcing: readonly [VaneForcing, VaneForcing, VaneForcing],
): VaneState {
  const rate = (at: VaneState, force: VaneForcing): VaneState => ({
    angle: at.speed,
    speed: acceleration(vane, at, force),
  });
  const ahead = (slope: VaneState, h: number): VaneState => ({
    angle: Math.min(vane.maximumAngle, Math.max(0, state.angle + h * slope.angle)),
    speed: state.speed + h * slope.speed,
  });
  const [start, middle, end] = forcing;
  const k1 = rate(state, start);
  const k2 = rate(ahead(k1, duration / 2), middle);
  const k3 = rate(ahead(k2, duration / 2), middle);
  const k4 = rate(ahead(k3, duration), end);
  const angle = state.angle + (duration / 6) * (k1.angle + 2 * k2.angle + 2 * k3.angle + k4.angle);
  const speed = state.speed + (duration / 6) * (k1.speed + 2 * k2.speed + 2 * k3.speed + k4.speed);
  if (angle <= 0) return { angle: 0, speed: Math.max(0, speed) };
  if (angle >= vane.maximumAngle) return { angle: vane.maximumAngle, speed: Math.min(0, speed) };
  return { angle, speed };
}

/** (3) at an angle where the vane is at rest. */
export function vaneNaturalFrequency(
  vane: MovingVane,
  angle: number,
): { readonly angularFrequency: number; readonly dampingRatio: number } {
  requirePositive("inertia", vane.inertia);
  const area = evaluateMonotoneCubic(vane.effectiveArea, angle);
  requirePositive("effective area", area);
  // at rest q^2 S h/(2 A^2) = M, so that the flow's stiffness is 2 M A'/A
  const stiffness =
    vane.springRate + (2 * vaneTorque(vane, angle) * slopeOfMonotoneCubic(vane.effectiveArea, angle)) / area;
  const angularFrequency = Math.sqrt(stiffness / vane.inertia);
  return { angularFrequency, dampingRatio: vane.damping / (2 * Math.sqrt(stiffness * vane.inertia)) };
}

function acceleration(vane: MovingVane, state: VaneState, force: VaneForcing): number {
  const area = evaluateMonotoneCubic(vane.effectiveArea, state.angle);
  const pressure = force.sensedFlow === 0 ? 0 : 0.5 * (force.sensedFlow / area) ** 2 * Math.sign(force.sensedFlow);
  const drive = vane.flapArea * vane.lever * (pressure + (1 - vane.compensation) * force.pulsation);
  return (drive - vaneTorque(vane, state.angle, force.tilt) - vane.damping * state.speed) / vane.inertia;
}
