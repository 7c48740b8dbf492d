/**
 * What is known of the mixture at one operating point: closed loop or not, what was commanded, what each probe reads.
 *
 * Rule    a wide control probe is read; a narrow one holds its target in closed loop by construction, and in open loop shows only
 *         on which side of stoichiometric the mixture is. An independent probe or a gas analyser stands apart
 */
import type { OperatingPoint } from "../channels/index.ts";
import { NARROW_PROBE } from "../channels/index.ts";
import { type EngineDescription, exhaustLambda, fuelAtoms } from "../engine/index.ts";
import { find } from "./readings.ts";

export type Lambda = { readonly value: number; readonly variance: number };

/** lambda from 1 beyond which an untold loop can't have been closed. Common practice, no source. */
const UNTOLD_LAMBDA = 0.05;
const PLAUSIBLE = [0.5, 2] as const;

/** SAE J1979 calls it the commanded equivalence ratio (PID 44), and its number is lambda [j1979]. */
export function commandedLambda(point: OperatingPoint, bank: 1 | 2 | null): number | null {
  const reading = find(point, "lambdaCommanded", bank) ?? find(point, "equivalenceRatioCommanded", bank);
  return reading !== null && reading.mean > 0 ? reading.mean : null;
}

/** The control probe's number; null where it is narrow. */
export function controlLambda(point: OperatingPoint, bank: 1 | 2 | null): Lambda | null {
  const reading = find(point, "lambda", bank);
  return reading === null ? null : plausible(reading.mean, reading.variance);
}

/** An independent probe's number, or that of a gas analyser; of the bank named or of the whole engine. */
export function independentLambda(point: OperatingPoint, engine: EngineDescription, bank: 1 | 2 | null): Lambda | null {
  const probe =
    bank === null ? point.readings.get("lambdaIndependent") : point.readings.get(`lambdaIndependent:${bank}`);
  if (probe !== undefined) return plausible(probe.mean, probe.variance);
  return bank === null ? analyserLambda(point, engine) : null;
}

/** Carbon atoms in the unit in which a garage analyser states hydrocarbons: hexane. */
const HEXANE = 6;
/** a gas analyser's readings of a warm engine that burns */
const LEAST_CARBON_DIOXIDE = 0.04;

/** Brettschneider; its variance by the slopes along each gas. */
function analyserLambda(point: OperatingPoint, engine: EngineDescription): Lambda | null {
  const gases = (["carbonDioxide", "carbonMonoxide", "oxygen", "hydrocarbons", "nitrogenOxides"] as const).map((q) =>
    find(point, q, null),
  );
  const [dioxide, monoxide, oxygen] = gases;
  const atoms = fuelAtoms(engine.fuel);
  if (atoms === null || !dioxide || !monoxide || !oxygen || dioxide.mean < LEAST_CARBON_DIOXIDE) return null;
  const values = gases.map((g) => Math.max(0, g?.mean ?? 0));
  const lambdaOf = ([carbonDioxide, carbonMonoxide, o2, hydrocarbons, nitricOxide]: readonly number[]) =>
    exhaustLambda(
      {
        carbonDioxide: carbonDioxide!,
        carbonMonoxide: carbonMonoxide!,
        oxygen: o2!,
        hydrocarbons: hydrocarbons!,
        nitricOxide: nitricOxide!,
        carbonPerHydrocarbon: HEXANE,
      },
      atoms,
    );
  const value = lambdaOf(values);
  const variance = gases.reduce((sum, gas, g) => {
    const sd = Math.sqrt(gas?.variance ?? 0);
    return sd === 0 ? sum : sum + (lambdaOf(values.map((v, n) => (n === g ? v + sd : v))) - value) ** 2;
  }, 0);
  return plausible(value, variance);
}

function plausible(value: number, variance: number): Lambda | null {
  return value > PLAUSIBLE[0] && value < PLAUSIBLE[1] ? { value, variance } : null;
}

/** Closed loop as the states say; in a recording without a word on it, trims of a warm engine below full load count. */
export function isClosedLoop({ states }: OperatingPoint, hasTrim: boolean, loopIsTold: boolean): boolean {
  if (states.includes("closed-loop")) return true;
  if (loopIsTold) return false;
  if ((["open-loop", "enrichment", "full-load", "warm-up"] as const).some((state) => states.includes(state)))
    return false;
  return hasTrim;
}

/** Nobody told the loop nor what was commanded, and the mixture is this far from stoichiometric: it was wanted, by how much is not known. */
export function wantedByNobodyKnows(lambda: Lambda | null, commanded: number | null, loopIsTold: boolean): boolean {
  return !loopIsTold && commanded === null && lambda !== null && Math.abs(lambda.value - 1) > UNTOLD_LAMBDA;
}

/** +1: a narrow probe says leaner than stoichiometric all through the point; -1: richer; 0: neither, or not recorded. */
export function narrowSide(point: OperatingPoint, engine: EngineDescription, bank: 1 | 2 | null): 1 | -1 | 0 {
  const volts = engine.lambdaProbe === "wide" ? null : find(point, "probeVoltage", bank);
  if (volts === null) return 0;
  if (volts.high < NARROW_PROBE.lean) return 1;
  return volts.low > NARROW_PROBE.rich ? -1 : 0;
}
