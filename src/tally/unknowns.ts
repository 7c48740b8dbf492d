/**
 * The unknowns of a healthy engine as columns: how each moves each witness at each point, one standard deviation a column.
 * What is believed about them stands in assumptions.json.
 */

import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import type { Assumptions } from "./assumptions.ts";
import { logResidual, logWarming } from "./breathing-mean.ts";
import { intakeTemperature } from "./point-physics.ts";
import { find } from "./readings.ts";
import { smoothFunction } from "./smooth-function.ts";
import type { PointPhysics, TallyWitness } from "./tally-model.ts";

/** Writes the effect of one unknown on one witness at one point into `row` from `offset` on. */
export type Unknown = {
  readonly name: string;
  readonly columns: number;
  readonly fill: (i: number, witness: TallyWitness, row: Float64Array, offset: number) => void;
};

type Context = {
  readonly engine: EngineDescription;
  readonly a: Assumptions;
  readonly points: readonly OperatingPoint[];
  readonly physics: PointPhysics;
  /** the states over which the knots of smooth functions are laid: those of the job, also where others are asked for */
  readonly visited: PointPhysics;
};

const isFuel = (w: TallyWitness) => w.startsWith("fuel");
const isMeter = (w: TallyWitness) => w.startsWith("meter");

export function unknownsOf(context: Context, witnesses: readonly TallyWitness[]): Unknown[] {
  const dosesByPressure = context.engine.metering === "pressure";
  /** breathing stands in the pressure witness, and in the fuel witness where the computer doses by pressure */
  const breathes = (w: TallyWitness) => w === "pressure" || (dosesByPressure && isFuel(w));
  const list: Unknown[] = [humidity(context), ...meterUnknowns(context, witnesses)];
  if (witnesses.some(breathes))
    list.push(
      ...breathingUnknowns(context, breathes),
      sensorOffset(context),
      heatSoak(context),
      ...temperatureNotRecorded(context, breathes),
    );
  if (witnesses.some(isFuel)) list.push(...fuelUnknowns(context, witnesses));
  if (dosesByPressure && witnesses.some(isFuel)) list.push(...tableUnknowns(context));
  return list;
}

function single(name: string, effect: (i: number, w: TallyWitness) => number): Unknown {
  return { name, columns: 1, fill: (i, w, row, offset) => (row[offset] = row[offset]! + effect(i, w)) };
}

function alongFlow(
  context: Context,
  name: string,
  amplitude: number,
  length: number,
  on: (w: TallyWitness) => boolean,
): Unknown {
  const { air } = context.physics;
  const f = smoothFunction({ amplitude, lengths: [length], spans: [span(context.visited.air)] });
  return {
    name,
    columns: f.columns,
    fill: (i, w, row, offset) => {
      if (on(w) && air[i]! > 0) f.row([Math.log(air[i]!)], row, offset, 1);
    },
  };
}

function overSpeedAndPressure(
  context: Context,
  name: string,
  amplitude: number,
  on: (w: TallyWitness) => boolean,
): Unknown {
  const { a, physics, visited } = context;
  const f = smoothFunction({
    amplitude,
    lengths: [a.breathingLengthSpeed, a.breathingLengthPressure],
    spans: [span(visited.speed), span(visited.pressure)],
  });
  return {
    name,
    columns: f.columns,
    fill: (i, w, row, offset) => {
      if (on(w)) f.row([Math.log(physics.speed[i]!), Math.log(physics.pressure[i]!)], row, offset, 1);
    },
  };
}

function humidity({ a }: Context): Unknown {
  return single("humidity", (_, w) => (isMeter(w) ? a.humidity : w === "pressure" ? 1.608 * a.humidity : 0));
}

function meterUnknowns(context: Context, witnesses: readonly TallyWitness[]): Unknown[] {
  const { a } = context;
  return witnesses
    .filter(isMeter)
    .flatMap((id) => [
      single(`${id} scale`, (_, w) => (w === id ? a.meterScale : 0)),
      alongFlow(context, `${id} curve`, a.meterShape, a.meterLength, (w) => w === id),
    ]);
}

function breathingUnknowns(context: Context, on: (w: TallyWitness) => boolean): Unknown[] {
  const { engine, a, points, physics } = context;
  const level = breathingLevelSd(engine, a);
  const coolant = points.map((p) => find(p, "coolantTemperature", null)?.mean ?? null);
  const warming = points.map((_, i) => logWarming(physics, i, coolant[i]!) / 0.3);
  return [
    single("breathing level", (_, w) => (on(w) ? level : 0)),
    single("residual-gas strength", (i, w) => (on(w) ? a.residualStrengthSd * logResidual(engine, physics, i) : 0)),
    single("charge heating", (i, w) => (on(w) ? a.chargeHeating * warming[i]! : 0)),
    overSpeedAndPressure(context, "breathing shape", a.breathingShape, on),
  ];
}

/** sd of the level of breathing (ln), as the engine file states it or not */
export function breathingLevelSd({ volumetricEfficiency: stated }: EngineDescription, a: Assumptions): number {
  if (stated === null) return a.breathingUnknown;
  return stated.sd === null ? a.breathingStated : stated.sd / stated.value;
}

function sensorOffset({ a, physics }: Context): Unknown {
  return single("pressure sensor offset", (i, w) => (w === "pressure" ? a.pressureOffset / physics.pressure[i]! : 0));
}

function heatSoak({ a, physics }: Context): Unknown {
  const fade = (i: number) => Math.sqrt(physics.idleFlow / Math.max(physics.air[i]!, physics.idleFlow));
  return single("heat soak", (i, w) =>
    w === "pressure" ? (-a.heatSoak * fade(i)) / physics.intakeTemperature[i]! : 0,
  );
}

/** Where nobody recorded the intake temperature it is one unknown for the whole job, not noise from point to point. */
function temperatureNotRecorded({ a, points, physics }: Context, on: (w: TallyWitness) => boolean): Unknown[] {
  if (points.some((p) => intakeTemperature(p) !== null)) return [];
  return [single("intake temperature", (i, w) => (on(w) ? a.temperatureUnknown / physics.intakeTemperature[i]! : 0))];
}

function fuelUnknowns(context: Context, witnesses: readonly TallyWitness[]): Unknown[] {
  const { a, points, physics } = context;
  const fuels = witnesses.filter(isFuel);
  const list = [
    single("fuel delivery", (_, w) => (isFuel(w) ? a.fuelScale : 0)),
    single("injector dead time", (i, w) => (isFuel(w) ? a.deadTime / physics.effectivePulse[i]! : 0)),
    alongFlow(context, "fuel shape", a.fuelShape, 1, isFuel),
  ];
  if (points.some((p) => purgeOpening(p) > 0))
    list.push(single("purge", (i, w) => (isFuel(w) ? a.purge * purgeOpening(points[i]!) : 0)));
  // Each bank has injectors and a probe of its own: half of the spread is shared, half is not.
  if (fuels.length > 1)
    list.push(...fuels.map((id) => single(`${id} delivery`, (_, w) => (w === id ? 0.5 * a.fuelScale : 0))));
  return list;
}

/** 0 shut, 1 open: the sd of purge fuel is believed only while the valve is open. */
function purgeOpening(point: OperatingPoint): number {
  const purge = find(point, "purge", null)?.mean ?? 0;
  return purge > 0.02 ? Math.min(1, 0.3 + purge) : 0;
}

function tableUnknowns(context: Context): Unknown[] {
  return [
    single("engine computer's table, level", (_, w) => (isFuel(w) ? context.a.tableScale : 0)),
    overSpeedAndPressure(context, "engine computer's table, shape", context.a.tableShape, isFuel),
  ];
}

function span(values: Float64Array): readonly [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const v of values) {
    if (!(v > 0)) continue;
    low = Math.min(low, Math.log(v));
    high = Math.max(high, Math.log(v));
  }
  return low <= high ? [low, high] : [0, 1];
}
