/**
 * Who moves the air and the speed: the foot on the throttle, the idle governor, the wish of the boost control.
 *
 * Throttle when held: the opening that the drawing needs for the wanted pressure, followed by a foot with a lag and a seeded
 * unsteadiness. Free: proportional and integral on the relative speed error, with a fast help from the spark.
 * All gains and lags: common practice, no source.
 */
import { speedDensityFlow } from "../engine/index.ts";
import type { SeededRandom } from "../numerics/index.ts";
import { efficiencyDrawn } from "./breathing.ts";
import type { Demand } from "./driver.ts";
import { type KernelFlow, orificeKernel } from "./orifice-kernel.ts";
import type { PreparedEngine } from "./prepared-engine.ts";
import { fullArea } from "./throttle-plate.ts";

export type GovernorState = {
  /** m2 effective */
  throttleArea: number;
  integral: number;
  /** ln of the foot's error, wandering */
  wander: number;
  sparkShare: number;
  /** kg a cycle, diesel */
  idleDose: number;
};

export function newGovernor(e: PreparedEngine): GovernorState {
  return {
    throttleArea: e.design.ignition === "spark" ? idleArea(e) : fullArea(e.design.intake.throttleBore),
    integral: 0,
    wander: 0,
    sparkShare: 0.85,
    idleDose: idleDose(e),
  };
}

export type GovernorInputs = {
  readonly speed: number;
  readonly demand: Demand;
  readonly random: SeededRandom;
};

const kernel: KernelFlow = { flow: 0, byFirst: 0, bySecond: 0 };

export function stepGovernor(e: PreparedEngine, state: GovernorState, u: GovernorInputs, dt: number): void {
  const { demand } = u;
  const spark = e.design.ignition === "spark";
  const lag = (seconds: number) => 1 - Math.exp(-dt / seconds);
  const governed = demand.mode === "free" && demand.load === null;
  if (governed && u.speed > 5) {
    const error = Math.min(Math.max((demand.speed - u.speed) / demand.speed, -0.4), 0.4);
    if (Math.abs(error) < 0.25) state.integral = Math.min(Math.max(state.integral + 0.9 * error * dt, -1), 1.2);
    state.sparkShare = Math.min(Math.max(0.85 + 1.5 * error, 0.6), 1);
    const correction = Math.exp(state.integral + 1.2 * error);
    const faster = (demand.speed / e.design.idleSpeed) ** 1.1;
    if (spark) state.throttleArea += (idleArea(e) * faster * correction - state.throttleArea) * lag(0.05);
    else state.idleDose = idleDose(e) * correction * (faster / (demand.speed / e.design.idleSpeed)) ** 0.5;
  } else if (spark) {
    state.sparkShare = 1;
    state.wander += -state.wander * (dt / 1.5) + 0.012 * Math.sqrt((2 * dt) / 1.5) * u.random.normal();
    const wanted = demand.load === null ? 1.3 * idleArea(e) : areaFor(e, demand, u.speed) * Math.exp(state.wander);
    state.throttleArea += (wanted - state.throttleArea) * lag(0.2);
  }
}

/** Area that the drawing says gives the wanted share of full-load pressure. */
function areaFor(e: PreparedEngine, demand: Demand, speed: number): number {
  const { design, ambient } = e;
  const full = fullArea(design.intake.throttleBore);
  const load = demand.load ?? 0;
  if (load >= 0.97) return full;
  const pressure = wantedPressure(e, load);
  const upstream = Math.max(ambient.pressure, pressure * 1.04);
  const flow = speedDensityFlow({
    volumetricEfficiency: efficiencyDrawn(e.breathing, speed, pressure, ambient.pressure * 1.02),
    manifoldPressure: pressure,
    displacement: design.displacement,
    engineSpeed: speed,
    chargeTemperature: 312,
  });
  orificeKernel(kernel, upstream, pressure, 1 / Math.sqrt(e.air.gasConstant * 300), 0);
  return Math.min(full, flow / Math.max(kernel.flow, 1e-9));
}

function wantedPressure(e: PreparedEngine, load: number): number {
  return e.ambient.pressure * load * (e.design.charger?.largestRatio ?? 1);
}

/** Ratio the boost control wants of the compressor: a little more than the manifold needs; a diesel always some. */
export function wantedRatio(e: PreparedEngine, load: number): number {
  const { charger, ignition } = e.design;
  if (charger === null) return 1;
  return ignition === "spark"
    ? Math.max(1, (1.06 * wantedPressure(e, load)) / e.ambient.pressure)
    : 1 + (charger.largestRatio - 1) * Math.min(1, 0.3 + load);
}

/** m2 effective of the closed plate and idle passage that the drawing needs at idle: choked flow of the idle air. */
function idleArea(e: PreparedEngine): number {
  orificeKernel(kernel, 101_325, 31e3, 1 / Math.sqrt(e.air.gasConstant * 300), 0);
  return e.idleFlow / kernel.flow;
}

/** kg a cycle that balances friction at idle. */
function idleDose(e: PreparedEngine): number {
  return (2 * 0.0165 * e.idleFlow) / e.ratioAssumed / e.design.idleSpeed / 0.1;
}
