/**
 * The engine computer: how much air it believes in, how much fuel it doses, how it learns, when it cuts or enriches.
 *
 * Equation    meter     B = M, followed with the filling time of the manifold                                      (1)
 *             pressure  B = eta_ecu p_read V N/(2 R T)(1 + eps), eta_ecu the drawing's                              (2)
 *             both      B = the pressure's air times a slow ratio M over it: the meter decides when running steady   (3)
 *             with an EGR valve by position, a spark engine's pressure air is less the flow the drawing gives for it
 *             pedal     dose by the foot, limited by the smoke limit of the metered air; EGR holds the meter at a set-point (4)
 *             dose = B (1 + short)(1 + long)/(AFR lambda_c)
 * Symbols     B, M kg/s | as in breathing.ts and air-path.ts
 * Validity    all speeds; no dose below 3 rev/s
 * Source      (1) to (3) section 5 of the design; rates, limits and thresholds common practice, no source
 */
import { chargeTemperature, speedDensityFlow } from "../engine/index.ts";
import { efficiencyDrawn } from "./breathing.ts";
import type { Demand } from "./driver.ts";
import { newTrims, stepTrims, type TrimState, trimCell, trimFactor } from "./fuel-trims.ts";
import type { PreparedEngine } from "./prepared-engine.ts";
import { expectedEgr, stepSparkEgr } from "./spark-egr.ts";

/** What the sensors tell it; barometer, pressure, temperatures and lambda with their errors. */
export type Sensors = {
  speed: number;
  meterReading: number;
  pressure: number;
  barometer: number;
  intakeTemperature: number;
  coolant: number;
  /** one a bank */
  readonly lambdas: number[];
};

export type ComputerState = {
  /** one a bank */
  readonly trims: readonly TrimState[];
  /** (1) after filtering, and the slow ratio of (3) */
  meterAir: number;
  meterOverPressure: number;
  airDosedBy: number;
  cell: number;
  fuelCut: boolean;
  wideOpenFor: number;
  closedFor: number;
  lambdaCommanded: number;
  /** SAE J1979 PID $03: 1 open, not yet warm; 2 closed; 4 open by load or fuel cut */
  loop: 1 | 2 | 4;
  /** kg/s of each bank */
  readonly doses: number[];
  egrOpening: number;
  purge: number;
};

export function newComputer(banks: number): ComputerState {
  return {
    trims: Array.from({ length: banks }, newTrims),
    meterAir: 0,
    meterOverPressure: 1,
    airDosedBy: 0,
    cell: 0,
    fuelCut: false,
    wideOpenFor: 0,
    closedFor: 0,
    lambdaCommanded: 1,
    loop: 1,
    doses: new Array<number>(banks).fill(0),
    egrOpening: 0,
    purge: 0,
  };
}

const NORMAL_LEARNING = 30; // s
const WARM = 333; // K of coolant: closed loop and learning

export function stepComputer(
  e: PreparedEngine,
  state: ComputerState,
  sensors: Sensors,
  demand: Demand,
  dt: number,
  learningTime = NORMAL_LEARNING,
): void {
  const { design } = e;
  believeAir(e, state, sensors, dt);
  if (design.computer.dosedBy === "pedal") return;

  const idling = demand.load === null && (demand.mode === "held" || demand.speed <= design.idleSpeed * 1.05);
  if (idling && sensors.speed > 28) state.fuelCut = true;
  if (!idling || sensors.speed < 21) state.fuelCut = false;
  state.wideOpenFor = (demand.load ?? 0) > 0.9 ? state.wideOpenFor + dt : 0;
  const enriched = state.wideOpenFor > 0.3;
  const warm = sensors.coolant > WARM;
  const running = sensors.speed > 6;
  state.loop =
    state.fuelCut || enriched || !running ? (running ? 4 : 1) : warm && design.lambdaProbe !== "none" ? 2 : 1;
  state.lambdaCommanded = enriched ? design.computer.fullLoadLambda : warm ? 1 : 0.93;
  state.closedFor = state.loop === 2 ? state.closedFor + dt : 0;
  state.purge = purgeDuty(state, sensors, idling, dt);
  stepSparkEgr(e, state, sensors, dt);

  const load = state.airDosedBy / (0.6 * design.displacement * Math.max(sensors.speed, 3));
  const cell = trimCell(sensors.speed, load);
  const input = {
    probe: design.lambdaProbe === "wide" ? ("wide" as const) : ("narrow" as const),
    lambdaCommanded: state.lambdaCommanded,
    cell,
    limit: design.computer.trimLimit,
    learningTime: cell === state.cell && state.closedFor > 3 ? learningTime : Number.POSITIVE_INFINITY,
  };
  state.cell = cell;
  const closed = state.loop === 2 && state.closedFor > 1;
  const shut = state.fuelCut || sensors.speed < 3;
  const untrimmed = state.airDosedBy / (e.ratioAssumed * state.lambdaCommanded) / state.trims.length;
  for (const [bank, trims] of state.trims.entries()) {
    const own = { ...input, lambdaRead: sensors.lambdas[bank]! };
    if (closed) stepTrims(trims, own, dt);
    else trims.short = 0;
    state.doses[bank] = shut ? 0 : untrimmed * (closed ? trimFactor(trims, own) : 1 + trims.long[cell]!);
  }
}

function believeAir(e: PreparedEngine, state: ComputerState, sensors: Sensors, dt: number): void {
  const { design } = e;
  const speed = Math.max(sensors.speed, 0.1);
  const sensorInManifold = design.intakeTemperatureAt === "manifold";
  const breathing = {
    manifoldPressure: Math.max(0, sensors.pressure),
    displacement: design.displacement,
    engineSpeed: speed,
    chargeTemperature: sensorInManifold
      ? sensors.intakeTemperature
      : chargeTemperature({
          intakeTemperature: sensors.intakeTemperature,
          coolantTemperature: sensors.coolant,
          massFlow: Math.max(state.airDosedBy, 1e-3),
        }),
  };
  const everything =
    speedDensityFlow({
      ...breathing,
      volumetricEfficiency: efficiencyDrawn(e.breathing, speed, Math.max(sensors.pressure, 5e3), sensors.barometer),
    }) /
    (1 + e.vapourDisplacement);
  const pressureAir = Math.max(0.5 * everything, everything - expectedEgr(e, state.egrOpening, sensors));
  const fillingTime = (2 * design.intake.manifoldVolume) / (0.8 * design.displacement * Math.max(speed, 5));
  state.meterAir += (sensors.meterReading - state.meterAir) * (1 - Math.exp(-dt / fillingTime));
  switch (design.computer.dosedBy) {
    case "pressure":
      state.airDosedBy = pressureAir;
      return;
    case "both": {
      if (pressureAir > 1e-4 && sensors.speed > 6) {
        const ratio = Math.min(Math.max(state.meterAir / pressureAir, 0.5), 2);
        state.meterOverPressure += (ratio - state.meterOverPressure) * (1 - Math.exp(-dt / 1.5));
      }
      state.airDosedBy = pressureAir * state.meterOverPressure;
      return;
    }
    default:
      state.airDosedBy = state.meterAir;
  }
}

/** Canister purge: opens while driving in closed loop, shut at idle. */
function purgeDuty(state: ComputerState, sensors: Sensors, idling: boolean, dt: number): number {
  const open = state.loop === 2 && state.closedFor > 4 && !idling && sensors.speed > 22;
  return open ? Math.min(1, state.purge + 0.2 * dt) : Math.max(0, state.purge - dt);
}
