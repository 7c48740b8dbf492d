/**
 * The unknowns of a healthy engine as columns: how each moves each witness at each point, one standard deviation a column.
 * What is believed about them stands in assumptions.json.
 */
import type { EngineDescription, MeterDescription } from "../engine/index.ts";
import { sensedDensityExponent } from "../meters/index.ts";
import type { Assumptions } from "./assumptions.ts";
import { logResidual, logWarming } from "./breathing-mean.ts";
import { fuelUnknowns } from "./fuel-unknowns.ts";
import { motoredShare } from "./motored-breathing.ts";
import { intakeTemperature } from "./point-physics.ts";
import { find } from "./readings.ts";
import type { TallyWitness } from "./tally-model.ts";
import { throttleUnknowns } from "./throttle-unknowns.ts";
import {
  alongFlow,
  isFuelSide,
  isMeter,
  overSpeedAndPressure,
  single,
  type Unknown,
  type UnknownContext,
} from "./unknown-forms.ts";

export function unknownsOf(context: UnknownContext, witnesses: readonly TallyWitness[]): Unknown[] {
  const { engine, physics, fuelFrom } = context;
  const fromTable = (w: TallyWitness, i: number) =>
    isFuelSide(w) && (fuelFrom === undefined ? engine.metering === "pressure" : fuelFrom(i, w) === "table");
  /** breathing stands in the pressure witness, and in the fuel witness where the computer doses by a table of it */
  const breathes = (w: TallyWitness, i: number) => w === "pressure" || fromTable(w, i);
  const tabled = context.points.some((_, i) => witnesses.some((w) => fromTable(w, i)));
  const list: Unknown[] = [humidity(context), ...meterUnknowns(context, witnesses)];
  if (witnesses.includes("pressure") || tabled)
    list.push(
      ...breathingUnknowns(context, breathes),
      sensorOffset(context),
      heatSoak(context),
      ...temperatureNotRecorded(context, breathes),
    );
  if (witnesses.some(isFuelSide)) list.push(...fuelUnknowns(context, witnesses));
  if (tabled) list.push(...tableUnknowns(context, fromTable));
  if (witnesses.includes("throttle") && physics.throttle !== null)
    list.push(...throttleUnknowns(context, physics.throttle));
  if (witnesses.some((w) => w === "throttle" || densityExponent(engine, w) > 0)) list.push(barometer(context));
  return list;
}

function humidity({ a }: UnknownContext): Unknown {
  return single("humidity", (_, w) =>
    isMeter(w) || w === "throttle" ? a.humidity : w === "pressure" ? 1.608 * a.humidity : 0,
  );
}

function meterUnknowns(context: UnknownContext, witnesses: readonly TallyWitness[]): Unknown[] {
  const { a } = context;
  return witnesses
    .filter(isMeter)
    .flatMap((id) => [
      single(`${id} scale`, (_, w) => (w === id ? a.meterScale : 0)),
      alongFlow(context, `${id} curve`, a.meterShape, a.meterLength, (w) => w === id),
    ]);
}

function breathingUnknowns(context: UnknownContext, on: (w: TallyWitness, i: number) => boolean): Unknown[] {
  const { engine, a, points, physics } = context;
  const level = breathingLevelSd(engine, a);
  const coolant = points.map((p) => find(p, "coolantTemperature", null)?.mean ?? null);
  const warming = points.map((_, i) => logWarming(physics, i, coolant[i]!) / 0.3);
  return [
    single("breathing level", (i, w) => (on(w, i) ? level : 0)),
    single("residual-gas strength", (i, w) => (on(w, i) ? a.residualStrengthSd * logResidual(engine, physics, i) : 0)),
    single("charge heating", (i, w) => (on(w, i) ? a.chargeHeating * warming[i]! : 0)),
    overSpeedAndPressure(context, "breathing shape", a.breathingShape, on),
    ...motoredBreathing(context, on),
  ];
}

/** With the fuel cut: a level of its own, and a slope along the pressure; both as far as the pressure is low (motored-breathing.ts). */
function motoredBreathing(context: UnknownContext, on: (w: TallyWitness, i: number) => boolean): Unknown[] {
  const { a, points, physics } = context;
  const share = points.map((p, i) => motoredShare(p, physics.pressure[i]!, physics.barometer[i]!));
  if (!share.some((s) => s > 0)) return [];
  const here = (w: TallyWitness, i: number) => (on(w, i) ? (share[i] ?? 0) : 0);
  return [
    single("breathing with the fuel cut", (i, w) => a.motoredBreathing * here(w, i)),
    single("breathing with the fuel cut, slope", (i, w) => a.motoredSlope * here(w, i) * ((share[i] ?? 1) - 1)),
  ];
}

/** sd of the level of breathing (ln), as the engine file states it or not */
export function breathingLevelSd({ volumetricEfficiency: stated }: EngineDescription, a: Assumptions): number {
  if (stated === null) return a.breathingUnknown;
  return stated.sd === null ? a.breathingStated : stated.sd / stated.value;
}

function sensorOffset({ a, physics }: UnknownContext): Unknown {
  const { pressure, throttle } = physics;
  return single("pressure sensor offset", (i, w) => {
    if (w === "pressure") return a.pressureOffset / pressure[i]!;
    if (w !== "throttle" || throttle === null || !(throttle.area[i]! > 0)) return 0;
    return (a.pressureOffset / pressure[i]!) * throttle.pressureEffect[i]!;
  });
}

/** A warmed sensor makes the air look thinner: to the pressure, and to a meter whose mass is made with it. */
function heatSoak({ engine, a, physics }: UnknownContext): Unknown {
  const fade = (i: number) => Math.sqrt(physics.idleFlow / Math.max(physics.air[i]!, physics.idleFlow));
  const atMeter = engine.intakeTemperatureAt !== "manifold" && engine.intakeTemperatureAt !== "after-cooler";
  const share = (w: TallyWitness) =>
    w === "pressure" ? 1 : w === "throttle" ? 0.5 : atMeter ? densityExponent(engine, w) : 0;
  return single("heat soak", (i, w) => (-share(w) * a.heatSoak * fade(i)) / physics.intakeTemperature[i]!);
}

/** Where nobody recorded the intake temperature it is one unknown for the whole job, not noise from point to point. */
function temperatureNotRecorded(
  { a, points, physics }: UnknownContext,
  on: (w: TallyWitness, i: number) => boolean,
): Unknown[] {
  if (points.some((p) => intakeTemperature(p) !== null)) return [];
  return [
    single("intake temperature", (i, w) => (on(w, i) ? a.temperatureUnknown / physics.intakeTemperature[i]! : 0)),
  ];
}

/** The air pressure stated or recorded: in the mass of a vane or vortex meter, and before the throttle. */
function barometer({ engine, a, physics }: UnknownContext): Unknown {
  const { throttle } = physics;
  return single("barometer", (i, w) => {
    if (w !== "throttle") return (densityExponent(engine, w) * a.barometer) / physics.barometer[i]!;
    if (throttle === null || !(throttle.area[i]! > 0)) return 0;
    // ln H = ln p_u + ln Psi(p/p_u): a higher pressure before the throttle acts by itself, and as a lower one behind it
    return (a.barometer / throttle.upstream[i]!) * (1 - throttle.pressureEffect[i]!);
  });
}

/** By which power of the density the mass of this meter is made: 0 for heated meters and for other witnesses. */
function densityExponent({ meters }: EngineDescription, w: TallyWitness): number {
  const meter: MeterDescription | undefined = isMeter(w) ? meters.find((m) => m.id === w) : undefined;
  return meter === undefined ? 0 : sensedDensityExponent(meter.kind);
}

function tableUnknowns(context: UnknownContext, on: (w: TallyWitness, i: number) => boolean): Unknown[] {
  return [
    single("engine computer's table, level", (i, w) => (on(w, i) ? context.a.tableScale : 0)),
    overSpeedAndPressure(context, "engine computer's table, shape", context.a.tableShape, on),
  ];
}
