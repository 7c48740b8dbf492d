/**
 * The fuel side's word on the air, by the control probe (fuel) and by an independent one (exhaust).
 *
 * Equation    y = ln B + ln(1 + trim) + ln(lambda / lambda_c)       where the engine computer's air B is known or modelled
 *             y = ln(AFR m_fuel) + ln lambda                        where the injectors tell the fuel
 *             lambda: the control probe's (its target where it is narrow and the loop closed), or the independent one's
 * Symbols     B kg/s air dosed by: M, eta_ecu P, or the computer's own | trim 1 | lambda_c commanded
 * Bounds      a trim at its limit without a number of the mixture; a narrow probe that stands rich or lean in open loop
 * Source      design of the tally; engine/fuel-side; meters/fuel-side
 */
import type { OperatingPoint } from "../channels/index.ts";
import {
  commandedLambda,
  controlLambda,
  independentLambda,
  isClosedLoop,
  type Lambda,
  narrowSide,
  wantedByNobodyKnows,
} from "./mixture-reading.ts";
import { ownAir } from "./own-air.ts";
import { pulseFuel } from "./pulse-fuel.ts";
import { find, trimReading } from "./readings.ts";
import { addBound, dosesBy, effectOn, type Fuel, type FuelSource, type RowContext } from "./witness-row.ts";

/** sd of a primitive that was not recorded: it then carries no information (ln units) */
const UNKNOWN = 5;
/** a point of more readings and more seconds than these held still long enough for fuel and trims to follow */
const SETTLED_READINGS = 4;
const SETTLED_AFTER = 6;

type Dose = {
  readonly logAir: number;
  readonly from: FuelSource;
  readonly commanded: number | null;
  /** of readings that only the fuel side has */
  readonly variance: number;
};

/** What one bank's fuel says before any probe is read: y less ln lambda. */
type BankFuel = Dose & {
  readonly fuel: Fuel;
  readonly closed: boolean;
  readonly usable: boolean;
  readonly atLimit: 1 | -1 | 0;
  /** of lambda about its target: only where no probe reads it */
  readonly unsettled: number;
};

export function addFuelSide(context: RowContext): void {
  const { point, engine, row } = context;
  if (engine.ignition !== "spark" || point.states.includes("fuel-cut") || point.states.includes("cold")) return;
  const banks = context.fuels.flatMap((fuel) => bankFuel(context, fuel) ?? []);
  for (const { fuel, variance, from } of banks) {
    row.fuelFrom.set(fuel.id, from);
    if (from !== "meter" && from !== "table") forgetDosing(context, fuel.id);
    row.shared.push({ variance, effect: effectOn([fuel.id]) });
  }
  addExhaust(context, banks);
  for (const bank of banks) addFuel(context, bank);
}

/** Fuel known otherwise does not carry the errors of the readings by which the engine computer doses. */
function forgetDosing({ row }: RowContext, id: Fuel["id"]): void {
  row.shared.forEach(({ variance, effect }, n) => {
    if (!effect.has(id)) return;
    row.shared[n] = { variance, effect: new Map([...effect].filter(([other]) => other !== id)) };
  });
}

function bankFuel(context: RowContext, fuel: Fuel): BankFuel | null {
  const { point, engine, loopIsTold } = context;
  const dose = doseOf(context, fuel);
  if (dose === null) return null;
  const trim = trimReading(point, engine, fuel.bank);
  const closed = isClosedLoop(point, trim !== null, loopIsTold);
  // Open loop on a lifted pedal means fuel just cut or not yet back: walls and probe tell of another moment.
  const loaded = point.states.includes("enrichment") || point.states.includes("full-load");
  const byTrim = dose.from !== "pulse" && trim !== null;
  const lag = lagVariance(point);
  return {
    ...dose,
    fuel,
    closed,
    usable: closed || (loaded && (dose.from === "pulse" || dose.commanded !== null)),
    atLimit: closed ? (trim?.atLimit ?? 0) : 0,
    logAir: dose.logAir + (byTrim ? Math.log1p(trim.trim) : 0),
    variance: dose.variance + (byTrim ? trim.variance : 0) + lag,
    unsettled: (trim?.unsettled ?? 0) + lag,
  };
}

/** The air dosed by and how it is known. Injectors are asked where the engine computer's air is not recorded. */
function doseOf(context: RowContext, { id, bank }: Fuel): Dose | null {
  const { point, engine, i, physics, dosedBy } = context;
  const commanded = commandedLambda(point, bank);
  const recorded = dosedBy.get(id);
  if (dosesBy(engine) === "meter" && recorded !== undefined)
    return { logAir: recorded, from: "meter", commanded, variance: 0 };
  const pulse = pulseFuel(engine, point, i, physics, bank);
  if (pulse !== null) return { ...pulse, from: "pulse", commanded };
  if (dosesBy(engine) === null) return null;
  const own = ownAir(engine, point);
  if (own !== null) return { logAir: Math.log(own.value), from: "own-air", commanded, variance: own.variance };
  if (recorded !== undefined) return { logAir: recorded, from: "table", commanded, variance: 0 };
  // Dosed by an air that nobody recorded: the trims then bind the fuel side to nothing (a very wide primitive).
  const air = physics.air[i]! > 0 ? physics.air[i]! : physics.largestFlow;
  return { logAir: Math.log(air), from: "nobody", commanded, variance: UNKNOWN ** 2 };
}

/** y of one bank with this mixture. */
function logAirWith(bank: BankFuel, lambda: number): number {
  return bank.logAir + Math.log(bank.from === "pulse" ? lambda : lambda / (bank.commanded ?? 1));
}

function addFuel(context: RowContext, bank: BankFuel): void {
  const { point, engine, row, loopIsTold } = context;
  const { id, bank: which } = bank.fuel;
  const lambda = controlLambda(point, which);
  const seen = lambda ?? independentLambda(point, engine, which) ?? independentLambda(point, engine, null);
  if (wantedByNobodyKnows(seen, bank.commanded, loopIsTold)) return;
  if (!bank.closed && lambda === null) {
    addNarrowBound(context, bank, narrowSide(point, engine, which));
    return;
  }
  if (!bank.usable) return;
  const value = logAirWith(bank, lambda?.value ?? bank.commanded ?? 1);
  if (bank.atLimit !== 0 && lambda === null) {
    addBound(context, id, value, bank.atLimit, bank.variance + bank.unsettled);
    return;
  }
  row.y.set(id, value);
  const own = lambda === null ? bank.unsettled : lambda.variance / lambda.value ** 2;
  row.shared.push({ variance: own, effect: effectOn([id]) });
}

/**
 * Lean at full load: the air is at least what this fuel burns. Rich: at most. What was commanded there is 1 or richer, so a lean
 * probe bounds the air even where that was not recorded; a rich one then says nothing.
 */
function addNarrowBound(context: RowContext, bank: BankFuel, side: 1 | -1 | 0): void {
  const { states } = context.point;
  if (side === 0 || !(states.includes("enrichment") || states.includes("full-load"))) return;
  if (side === -1 && bank.from !== "pulse" && bank.commanded === null) return;
  addBound(context, bank.fuel.id, logAirWith(bank, 1), side, bank.variance);
}

/**
 * One witness for the independent probe: of the bank it names, or the mean of both where it names none. What is uncertain in the
 * fuel of a bank is as uncertain here; the probe is its own.
 */
function addExhaust(context: RowContext, banks: readonly BankFuel[]): void {
  const { row } = context;
  const heard = banks.flatMap((bank) => {
    const lambda = bank.usable ? independent(context, bank) : null;
    return lambda === null ? [] : [{ bank, lambda }];
  });
  if (heard.length === 0) return;
  const share = 1 / heard.length;
  const of = new Set(heard.map(({ bank }) => bank.fuel.id));
  row.shared.forEach(({ variance, effect }, n) => {
    const passed = [...effect].reduce((sum, [id, size]) => sum + (of.has(id) ? share * size : 0), 0);
    if (passed !== 0) row.shared[n] = { variance, effect: new Map([...effect, ["exhaust", passed]]) };
  });
  row.y.set("exhaust", share * heard.reduce((sum, { bank, lambda }) => sum + logAirWith(bank, lambda.value), 0));
  row.fuelFrom.set("exhaust", heard[0]!.bank.from);
  const probe = Math.max(...heard.map(({ lambda }) => lambda.variance / lambda.value ** 2));
  row.shared.push({ variance: probe, effect: effectOn(["exhaust"]) });
}

function independent({ point, engine, loopIsTold }: RowContext, { fuel, commanded }: BankFuel): Lambda | null {
  const own = fuel.bank === null ? null : independentLambda(point, engine, fuel.bank);
  const lambda = own ?? independentLambda(point, engine, null);
  return wantedByNobodyKnows(lambda, commanded, loopIsTold) ? null : lambda;
}

/**
 * While the air changes, fuel on the port walls, probe and trims lag behind it: the fuel witness of a moving point is known no
 * better than a share of that change. Common practice, no source.
 */
const LAG_SHARE = 0.3;

function lagVariance(point: OperatingPoint): number {
  let widest = 0;
  const brief = point.end - point.start < SETTLED_AFTER;
  for (const quantity of ["meterFlow", "meterVoltage", "manifoldPressure"] as const) {
    const reading = find(point, quantity, null);
    if (reading === null || !(reading.mean > 0) || (reading.samples > SETTLED_READINGS && !brief)) continue;
    widest = Math.max(widest, (reading.high - reading.low) / reading.mean);
  }
  return (LAG_SHARE * widest) ** 2;
}
