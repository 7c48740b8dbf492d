/**
 * The logarithm of every witness at every point, and the covariance that shared primitive readings give them.
 *
 * Equation    meter    y = ln(M - storage) - ln(1 + w)
 *             pressure y = ln(p V N / 2 R T) - ln(1 + 1.608 w + phi eps) + ln eta(N, p)          speed-density
 *             fuel     y = ln B + ln(1 + trim) + ln(lambda / lambda_c);  B = M, or eta P where the computer doses by pressure
 *             R = sum over primitives var(z) J J'
 * Symbols     M kg/s moist air as metered | w humidity ratio | storage kg/s taken up by the volume between meter and valves
 *             p Pa | T K charge | phi eps moles of fuel vapour per mole of air | eta prior mean of breathing
 * Source      design of the tally; speed-density [heywood1988] (2.27); storage from the ideal gas law
 */

import type { OperatingPoint } from "../channels/index.ts";
import { type EngineDescription, fuelVapourDisplacement, speedDensityFlow } from "../engine/index.ts";
import { AIR_WATER_MOLAR_RATIO, GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";
import type { Assumptions } from "./assumptions.ts";
import { logBreathingMean } from "./breathing-mean.ts";
import type { MeterSlot } from "./meter-slots.ts";
import { find, meterReading, trimReading } from "./readings.ts";
import { type Bound, HUMIDITY_RATIO, type PointState, type TallyWitness } from "./tally-model.ts";

/** sd of a primitive that was not recorded: it then carries no information (ln units) */
const UNKNOWN = 5;
/** lambda from 1 beyond which an untold loop can't have been closed. Common practice, no source. */
const UNTOLD_LAMBDA = 0.05;
/** a point of more readings than this held still long enough for fuel and trims to follow */
const SETTLED_READINGS = 4;

export type WitnessRow = {
  readonly y: Map<TallyWitness, number>;
  /** shared errors: variance of a primitive and its effect on each witness */
  readonly shared: { readonly variance: number; readonly effect: ReadonlyMap<TallyWitness, number> }[];
  readonly bounds: Omit<Bound, "point" | "witness">[];
  readonly boundWitness: TallyWitness[];
};

export function fuelWitnesses(engine: EngineDescription): { readonly id: TallyWitness; readonly bank: 1 | 2 | null }[] {
  return engine.banks === 2
    ? [
        { id: "fuel-bank1", bank: 1 },
        { id: "fuel-bank2", bank: 2 },
      ]
    : [{ id: "fuel", bank: null }];
}

type Fuel = { readonly id: TallyWitness; readonly bank: 1 | 2 | null };

type Context = {
  readonly point: OperatingPoint;
  readonly i: number;
  readonly engine: EngineDescription;
  readonly physics: PointState;
  readonly a: Assumptions;
  readonly fuels: readonly Fuel[];
  /** ln of the air by which the computer doses each bank */
  readonly dosedBy: Map<TallyWitness, number>;
  readonly row: WitnessRow;
  /** some point of the job is known to be in closed loop */
  readonly loopIsTold: boolean;
};

export function witnessRow(
  point: OperatingPoint,
  i: number,
  engine: EngineDescription,
  slots: readonly MeterSlot[],
  physics: PointState,
  a: Assumptions,
  loopIsTold: boolean,
): WitnessRow {
  const row: WitnessRow = { y: new Map(), shared: [], bounds: [], boundWitness: [] };
  const context: Context = {
    point,
    i,
    engine,
    physics,
    a,
    fuels: fuelWitnesses(engine),
    dosedBy: new Map(),
    row,
    loopIsTold,
  };
  for (const slot of slots) addMeter(context, slot);
  addPressure(context);
  if (dosesBy(engine) !== null) {
    for (const fuel of context.fuels)
      addFuel(context, fuel, context.dosedBy.get(fuel.id) ?? airNobodyRecorded(context, fuel));
  }
  return row;
}

/** Which witness the engine computer doses fuel by; null where that is not known or fuel leads (diesel). */
function dosesBy(engine: EngineDescription): "meter" | "pressure" | null {
  if (engine.metering === "pressure") return "pressure";
  return engine.metering === "meter" || engine.metering === "both" ? "meter" : null;
}

function addMeter(context: Context, slot: MeterSlot): void {
  const { point, i, engine, physics, row, fuels, dosedBy } = context;
  const temperature = physics.intakeTemperature[i]!;
  const reading = meterReading(point, slot, {
    pressure: physics.barometer[i]!,
    temperature,
    humidityRatio: HUMIDITY_RATIO,
  });
  if (reading === null) return;
  const flow = reading.value * slot.share;
  const fed =
    dosesBy(engine) === "meter"
      ? fuels.filter((f) => slot.bank === null || f.bank === null || f.bank === slot.bank)
      : [];
  for (const fuel of fed) dosedBy.set(fuel.id, Math.log(flow));
  row.shared.push({ variance: reading.variance, effect: effectOn([slot.id, ...fed.map((f) => f.id)]) });
  const storage = storageRate(point, engine, temperature);
  // A storage as large as the flow itself means the point is no operating point for this witness.
  if (Math.abs(storage) > 0.7 * flow) return;
  row.y.set(slot.id, Math.log(flow - storage) - Math.log1p(HUMIDITY_RATIO));
  row.shared.push({ variance: ((0.5 * storage) / flow) ** 2, effect: effectOn([slot.id]) });
}

function addPressure(context: Context): void {
  const { point, i, engine, physics, a, row, fuels, dosedBy } = context;
  const pressure = find(point, "manifoldPressure", null);
  if (pressure === null || !(pressure.mean > 0)) return;
  const temperature = find(point, "chargeTemperature", null) ?? find(point, "intakeTemperature", null);
  const speed = find(point, "engineSpeed", null)!;
  const filled = speedDensityFlow({
    manifoldPressure: pressure.mean,
    displacement: engine.displacement,
    engineSpeed: speed.mean,
    chargeTemperature: physics.intakeTemperature[i]!,
    volumetricEfficiency: 1,
  });
  const value =
    Math.log(filled) + logBreathingMean(engine, physics, a, i, find(point, "coolantTemperature", null)?.mean ?? null);
  const injection = engine.injection ?? (engine.ignition === "spark" ? "port" : "direct");
  row.y.set(
    "pressure",
    value - Math.log1p(AIR_WATER_MOLAR_RATIO * HUMIDITY_RATIO + fuelVapourDisplacement(engine.fuel, injection)),
  );
  const fed = dosesBy(engine) === "pressure" ? fuels : [];
  for (const fuel of fed) dosedBy.set(fuel.id, value);
  const both = effectOn(["pressure", ...fed.map((f) => f.id)]);
  row.shared.push({
    variance: pressure.variance / pressure.mean ** 2 + speed.variance / speed.mean ** 2,
    effect: both,
  });
  if (temperature !== null) row.shared.push({ variance: temperature.variance / temperature.mean ** 2, effect: both });
}

/** The computer doses by an air that nobody recorded: its trims then bind the fuel side to nothing (a very wide primitive). */
function airNobodyRecorded(context: Context, fuel: Fuel): number {
  const { row, physics, i } = context;
  row.shared.push({ variance: UNKNOWN ** 2, effect: effectOn([fuel.id]) });
  return Math.log(physics.air[i]! > 0 ? physics.air[i]! : physics.largestFlow);
}

function addFuel(context: Context, { id, bank }: Fuel, dosedBy: number): void {
  const { point, engine, row } = context;
  if (point.states.includes("fuel-cut") || point.states.includes("cold")) return;
  const trim = trimReading(point, engine, bank);
  const wide = find(point, "lambdaIndependent", bank) ?? find(point, "lambda", bank);
  const commanded = commandedLambda(point, bank);
  const closed = isClosedLoop(point, trim !== null, context.loopIsTold);
  // Open loop on a lifted pedal means fuel just cut or not yet back: walls and probe tell of another moment.
  const loaded = point.states.includes("enrichment") || point.states.includes("full-load");
  if (!closed && (wide === null || commanded === null || !loaded)) return;
  // Nobody told the loop nor what was commanded: a mixture this far from stoichiometric was wanted, and by how much is not known.
  if (!context.loopIsTold && commanded === null && wide !== null && Math.abs(wide.mean - 1) > UNTOLD_LAMBDA) return;
  let value = dosedBy + Math.log1p(trim?.trim ?? 0);
  let variance = (trim?.variance ?? 0) + lagVariance(point);
  if (wide !== null && wide.mean > 0.5 && wide.mean < 2) {
    value += Math.log(wide.mean / (commanded ?? 1));
    variance += wide.variance / wide.mean ** 2;
  }
  const atLimit = closed ? (trim?.atLimit ?? 0) : 0;
  if (atLimit !== 0 && wide === null) {
    row.bounds.push({ value, sign: atLimit, variance });
    row.boundWitness.push(id);
    return;
  }
  row.y.set(id, value);
  row.shared.push({ variance, effect: effectOn([id]) });
}

/** SAE J1979 calls it the commanded equivalence ratio (PID 44), and its number is lambda [j1979]. */
function commandedLambda(point: OperatingPoint, bank: 1 | 2 | null): number | null {
  const reading = find(point, "lambdaCommanded", bank) ?? find(point, "equivalenceRatioCommanded", bank);
  return reading !== null && reading.mean > 0 ? reading.mean : null;
}

/** Closed loop as the states say; in a recording without a word on it, trims of a warm engine below full load count. */
function isClosedLoop({ states }: OperatingPoint, hasTrim: boolean, loopIsTold: boolean): boolean {
  if (states.includes("closed-loop")) return true;
  if (loopIsTold) return false;
  if ((["open-loop", "enrichment", "full-load", "warm-up"] as const).some((state) => states.includes(state)))
    return false;
  return hasTrim;
}

/**
 * While the air changes, fuel on the port walls, probe and trims lag behind it: the fuel witness of a moving point is known no
 * better than a share of that change. Common practice, no source.
 */
const LAG_SHARE = 0.3;

function lagVariance(point: OperatingPoint): number {
  let widest = 0;
  for (const quantity of ["meterFlow", "meterVoltage", "manifoldPressure"] as const) {
    const reading = find(point, quantity, null);
    if (reading === null || !(reading.mean > 0) || reading.samples > SETTLED_READINGS) continue;
    widest = Math.max(widest, (reading.high - reading.low) / reading.mean);
  }
  return (LAG_SHARE * widest) ** 2;
}

/** kg/s that the volume between meter and valves takes up while its pressure changes: d/dt(p V/R T). */
function storageRate(point: OperatingPoint, engine: EngineDescription, temperature: number): number {
  const volume = (engine.manifoldVolume ?? 1.5 * engine.displacement) + (engine.chargeVolume ?? 0);
  const slope = find(point, "manifoldPressure", null)?.slope ?? 0;
  return (slope * volume) / (GAS_CONSTANT_DRY_AIR * temperature);
}

function effectOn(ids: readonly TallyWitness[]): ReadonlyMap<TallyWitness, number> {
  return new Map(ids.map((id) => [id, 1]));
}
