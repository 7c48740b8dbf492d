/**
 * Exhaust-gas recirculation of a spark engine: a valve set by a map of speed and load, and what the engine computer expects of it.
 *
 * Equation    m = A x G(p_b, p_read): the flow of the drawing's area A at opening x from a barometer's worth of exhaust            (1)
 * Symbols     x opening 0 to 1: none at idle, cold, at high load or high speed | G orifice flow, gas at EGR_TEMPERATURE
 * Validity    spark engines with a valve; of a diesel see diesel-control.ts
 * Source      (1) gas/orifice-flow-function.ts; the map: common practice, no source             Check spark-egr.test.ts
 */
import { type KernelFlow, orificeKernel } from "./orifice-kernel.ts";
import { EGR_TEMPERATURE, type PreparedEngine } from "./prepared-engine.ts";

type State = { egrOpening: number; readonly airDosedBy: number; readonly fuelCut: boolean };
type Readings = {
  readonly speed: number;
  readonly coolant: number;
  readonly pressure: number;
  readonly barometer: number;
};

const WARM = 333; // K of coolant
const SPEED = { from: [22, 27], to: [63, 75] } as const; // 1/s: opens between the first two, shuts between the last
const LOAD = { from: [0.22, 0.32], to: [0.6, 0.72] } as const; // air a stroke over a cylinder full of standard air
const SLOWEST = 3; // openings a second

const kernel: KernelFlow = { flow: 0, byFirst: 0, bySecond: 0 };

export function stepSparkEgr(e: PreparedEngine, state: State, sensors: Readings, dt: number): void {
  if (!hasSparkEgr(e)) return;
  const load = state.airDosedBy / (0.6 * e.design.displacement * Math.max(sensors.speed, 3));
  const allowed = sensors.coolant > WARM && !state.fuelCut && sensors.speed > 6;
  const wanted = allowed ? between(sensors.speed, SPEED) * between(load, LOAD) : 0;
  const largest = SLOWEST * dt;
  state.egrOpening += Math.min(Math.max(wanted - state.egrOpening, -largest), largest);
}

export function expectedEgr(e: PreparedEngine, opening: number, sensors: Readings): number {
  if (!hasSparkEgr(e) || opening === 0 || sensors.pressure >= sensors.barometer) return 0;
  const conductance = ((e.design.egrValveArea ?? 0) * opening) / Math.sqrt(e.air.gasConstant * EGR_TEMPERATURE);
  orificeKernel(kernel, sensors.barometer, Math.max(sensors.pressure, 5e3), conductance, 0);
  return kernel.flow;
}

function hasSparkEgr(e: PreparedEngine): boolean {
  return e.design.egrValveArea !== null && e.design.ignition === "spark";
}

/** Trapezium: 0 outside, 1 inside, straight between. */
function between(x: number, edges: typeof SPEED | typeof LOAD): number {
  const rising = (x - edges.from[0]) / (edges.from[1] - edges.from[0]);
  const falling = (edges.to[1] - x) / (edges.to[1] - edges.to[0]);
  return Math.min(Math.max(Math.min(rising, falling), 0), 1);
}
