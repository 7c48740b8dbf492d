/**
 * The way of the air: filter and meter, compressor, the volume before the throttle (1), throttle, manifold (2), cylinders.
 * Mass and energy of both volumes stepped in time, implicit in the pressures, so that a step may be longer than the
 * filling time constant and a very long step is the steady state.
 *
 * Equation    d(m_i)/dt = sum m_in - sum m_out                                                                   (1)
 *             d(m_i cv T_i)/dt = cp (sum m_in T_in - T_i sum m_out) + H_i (T_wall - T_i),  p_i = m_i R T_i/V_i      (2)
 *             P p_a - p_1 = (P k_f + k_c) m_s |m_s|/rho_a + P (L/A) dm_s/dt                                         (3)
 * Symbols     m kg/s or kg | T K | p Pa | V m3 | R, cp, cv of moist air, recirculated gas counted as air | H W/K |
 *             k_f filter, k_c cooler | P compressor pressure ratio | L/A 1/m length over section of the duct: inertia of its air
 * Validity    0.2 kPa < p < 500 kPa (asserted)
 * Numerics    backward Euler, (3) solved in closed form for m_s: Newton on p_1, p_2 at given new temperatures, temperatures from (2) with the flows found, in turn
 *             until both agree (SETTLED); with the old temperatures alone a volume fed through a wide hole overshoots its source and
 *             swings for ever. Masses are advanced by the flows found, so (1) and (2) hold to rounding whatever the residual (tested)
 * Assumes     gas that flows back into volume 1 is counted as fresh
 * Source      [heywood1988] 14.3 (filling and emptying)                       Check air-path.test.ts, air-path.props.test.ts
 */
import { assert, GAMMA_AIR } from "../quantities/index.ts";
import { type KernelFlow, orificeKernel } from "./orifice-kernel.ts";

export type AirConstants = {
  readonly volume1: number;
  readonly volume2: number;
  readonly gasConstant: number;
  readonly ambientPressure: number;
  readonly ambientTemperature: number;
  /** k/rho of (3), 1/(m2 kg)... Pa s2/kg2 */
  readonly filterResistance: number;
  readonly coolerResistance: number;
  /** L/A of (3), 1/m */
  readonly ductInertia: number;
};

/** Changed by every step. */
export type AirState = {
  pressure1: number;
  pressure2: number;
  temperature1: number;
  temperature2: number;
  /** mass share of recirculated gas in the manifold */
  recirculated: number;
  /** kg/s in the duct */
  ductFlow: number;
};

/** What holds during one step. Areas are effective (discharge times area), m2. */
export type AirInputs = {
  compressorRatio: number;
  /** K of the air that enters volume 1 */
  inletTemperature: number;
  throttleArea: number;
  leakArea: number;
  boostLeakArea: number;
  egrArea: number;
  exhaustPressure: number;
  /** K of the recirculated gas where it enters */
  egrTemperature: number;
  /** cylinders draw `draw * max(0, p2 (1 + residual) - residual * exhaustPressure)` */
  draw: number;
  residual: number;
  wallTemperature: number;
  /** W/K from wall to gas in the manifold */
  wallConductance: number;
};

/** kg/s, forward positive: into the engine; `boostLeak` out of volume 1; W of wall heat. */
export type AirFlows = {
  suction: number;
  throttle: number;
  leak: number;
  boostLeak: number;
  egr: number;
  cylinder: number;
  wallHeat: number;
};

const CP_PER_R = GAMMA_AIR / (GAMMA_AIR - 1);
const CV_PER_R = CP_PER_R - 1;
const ITERATIONS = 40;
const PASSES = 20;
const LEAST_INERTIA = 1; // Pa s/kg: of very long steps, so that no flow is divided by nothing
const SETTLED = 3e-6; // of the temperatures, from pass to pass
const kernel: KernelFlow = { flow: 0, byFirst: 0, bySecond: 0 };
const next = { pressure1: 0, pressure2: 0, temperature1: 0, temperature2: 0, mass1: 0, mass2: 0 };

export function stepAirPath(c: AirConstants, state: AirState, u: AirInputs, flows: AirFlows, dt: number): void {
  next.pressure1 = state.pressure1;
  next.pressure2 = state.pressure2;
  next.temperature1 = state.temperature1;
  next.temperature2 = state.temperature2;
  for (let pass = 0; pass < PASSES; pass++) {
    const { temperature1, temperature2 } = next;
    solvePressures(c, state, u, flows, dt);
    newTemperatures(c, state, u, flows, dt);
    const change = Math.abs(next.temperature1 / temperature1 - 1) + Math.abs(next.temperature2 / temperature2 - 1);
    if (change < SETTLED || pass === PASSES - 1) break;
    if (pass === 0) continue;
    next.temperature1 = 0.5 * (temperature1 + next.temperature1); // a hotter guess needs less inflow: undamped it swings
    next.temperature2 = 0.5 * (temperature2 + next.temperature2);
  }
  const entered = dt * flows.egr;
  const leaving = dt * (Math.max(0, -flows.leak) + Math.max(0, -flows.throttle) + flows.cylinder);
  const old2 = (state.pressure2 * c.volume2) / (c.gasConstant * state.temperature2);
  state.recirculated = (old2 * state.recirculated + entered) / (next.mass2 + leaving);
  flows.wallHeat = u.wallConductance * (u.wallTemperature - next.temperature2);
  state.ductFlow = flows.suction;
  state.temperature1 = next.temperature1;
  state.temperature2 = next.temperature2;
  state.pressure1 = (next.mass1 * c.gasConstant * next.temperature1) / c.volume1;
  state.pressure2 = (next.mass2 * c.gasConstant * next.temperature2) / c.volume2;
  assert(
    inRange(state.pressure1) && inRange(state.pressure2),
    `pressures between 0.2 and 500 kPa, got ${state.pressure1} and ${state.pressure2} Pa`,
  );
}

/** Newton on (1) with the new temperatures as they stand in `next`; the flows at the pressures found. */
function solvePressures(c: AirConstants, state: AirState, u: AirInputs, flows: AirFlows, dt: number): void {
  const R = c.gasConstant;
  const { temperature1: t1, temperature2: t2 } = state;
  const old1 = (state.pressure1 * c.volume1) / (R * t1 * dt);
  const old2 = (state.pressure2 * c.volume2) / (R * t2 * dt);
  const storage1 = c.volume1 / (R * next.temperature1 * dt);
  const storage2 = c.volume2 / (R * next.temperature2 * dt);
  const conductance = (area: number, temperature: number) => area / Math.sqrt(R * temperature);
  const throttleForward = conductance(u.throttleArea, t1);
  const throttleBack = conductance(u.throttleArea, t2);
  const leakIn = conductance(u.leakArea, c.ambientTemperature);
  const leakOut = conductance(u.leakArea, t2);
  const boostLeakIn = conductance(u.boostLeakArea, c.ambientTemperature);
  const boostLeakOut = conductance(u.boostLeakArea, t1);
  const egrIn = conductance(u.egrArea, u.egrTemperature);
  const head = u.compressorRatio * c.ambientPressure;
  const resistance = u.compressorRatio * c.filterResistance + c.coolerResistance;
  const inertia = (u.compressorRatio * c.ductInertia) / dt;

  let p1 = next.pressure1;
  let p2 = next.pressure2;
  for (let i = 0; i < ITERATIONS; i++) {
    const suctionBy1 = suction(flows, head - p1 + inertia * state.ductFlow, resistance, inertia);
    orificeKernel(kernel, p1, p2, throttleForward, throttleBack);
    flows.throttle = kernel.flow;
    const throttleBy1 = kernel.byFirst;
    const throttleBy2 = kernel.bySecond;
    orificeKernel(kernel, p1, c.ambientPressure, boostLeakOut, boostLeakIn);
    flows.boostLeak = kernel.flow;
    const boostLeakBy1 = kernel.byFirst;
    orificeKernel(kernel, c.ambientPressure, p2, leakIn, leakOut);
    flows.leak = kernel.flow;
    const leakBy2 = kernel.bySecond;
    let egrBy2 = 0;
    flows.egr = 0;
    if (u.egrArea > 0 && u.exhaustPressure > p2) {
      orificeKernel(kernel, u.exhaustPressure, p2, egrIn, 0);
      flows.egr = kernel.flow;
      // Nothing flows back through this one, so a Newton step must not pass the equal pressure: the whole chord near it.
      egrBy2 = p2 > 0.85 * u.exhaustPressure ? -kernel.flow / (u.exhaustPressure - p2) : kernel.bySecond;
    }
    const drawn = u.draw * (p2 * (1 + u.residual) - u.residual * u.exhaustPressure);
    flows.cylinder = Math.max(0, drawn);

    const r1 = p1 * storage1 - old1 - flows.suction + flows.throttle + flows.boostLeak;
    const r2 = p2 * storage2 - old2 - flows.throttle - flows.leak - flows.egr + flows.cylinder;
    const scale = 1e-8 + 1e-6 * (Math.abs(flows.throttle) + flows.cylinder);
    if (Math.abs(r1) + Math.abs(r2) < scale) break;
    const j11 = storage1 + suctionBy1 + throttleBy1 + boostLeakBy1;
    const j12 = throttleBy2;
    const j21 = -throttleBy1;
    const j22 = storage2 - throttleBy2 - leakBy2 - egrBy2 + (drawn > 0 ? u.draw * (1 + u.residual) : 0);
    const determinant = j11 * j22 - j12 * j21;
    p1 = advance(p1, (r1 * j22 - r2 * j12) / determinant);
    p2 = advance(p2, (r2 * j11 - r1 * j21) / determinant);
  }
  next.pressure1 = p1;
  next.pressure2 = p2;
}

/** At most a fifth of the pressure in one Newton step: the flow functions are concave, far steps overshoot. */
function advance(pressure: number, back: number): number {
  return pressure - Math.min(Math.max(back, -0.25 * pressure), 0.2 * pressure);
}

/** r m|m| + b m = D solved for the flow m. Returns the solver's slope by -p1. */
function suction(flows: AirFlows, push: number, resistance: number, inertia: number): number {
  const b = inertia + LEAST_INERTIA;
  flows.suction = (2 * push) / (b + Math.sqrt(b * b + 4 * resistance * Math.abs(push)));
  const drop = resistance * Math.abs(flows.suction);
  return Math.max(1 / (b + 2 * drop), 0.7 / (b + drop)); // see orifice-kernel.ts for the 0.7
}

/** New masses from the flows, new temperatures from (2). */
function newTemperatures(c: AirConstants, state: AirState, u: AirInputs, flows: AirFlows, dt: number): void {
  const R = c.gasConstant;
  const { temperature1: t1, temperature2: t2 } = state;
  const into = (flow: number) => Math.max(0, flow);
  const outOf = (flow: number) => Math.max(0, -flow);

  const old1 = (state.pressure1 * c.volume1) / (R * t1);
  next.mass1 = old1 + dt * (flows.suction - flows.throttle - flows.boostLeak);
  const in1 =
    into(flows.suction) * u.inletTemperature +
    outOf(flows.throttle) * t2 +
    outOf(flows.boostLeak) * c.ambientTemperature;
  const out1 = outOf(flows.suction) + into(flows.throttle) + into(flows.boostLeak);
  const newT1 = (old1 * CV_PER_R * t1 + dt * CP_PER_R * in1) / (next.mass1 * CV_PER_R + dt * CP_PER_R * out1);

  const old2 = (state.pressure2 * c.volume2) / (R * t2);
  next.mass2 = old2 + dt * (flows.throttle + flows.leak + flows.egr - flows.cylinder);
  const in2 =
    into(flows.throttle) * newT1 + into(flows.leak) * c.ambientTemperature + into(flows.egr) * u.egrTemperature;
  const out2 = outOf(flows.leak) + flows.cylinder;
  const back = outOf(flows.throttle); // entered volume 1 at the old temperature above, so it leaves with it here
  const wall = u.wallConductance / R;
  const newT2 =
    (old2 * CV_PER_R * t2 + dt * (CP_PER_R * (in2 - back * t2) + wall * u.wallTemperature)) /
    (next.mass2 * CV_PER_R + dt * (CP_PER_R * out2 + wall));

  next.temperature1 = newT1;
  next.temperature2 = newT2;
}

function inRange(pressure: number): boolean {
  return pressure > 200 && pressure < 500e3;
}
