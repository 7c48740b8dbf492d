/**
 * Mass flow through a critical (sonic) nozzle, the steadiest reference a flow bench can have: it depends on the inlet alone.
 *
 * Equation    m = A C C* p_0/sqrt(R T_0)                                                                         (1)
 *             C* = max over the expansion of rho u sqrt(R T_0)/p_0                                                (2)
 *             C = 0.9959 - 2.720 Re^-0.5   toroidal throat;   0.9976 - 0.1388 Re^-0.2   cylindrical throat           (3)
 * Symbols     m kg/s | A m2 throat | p_0 Pa, T_0 K at rest | C* 1 critical flow factor | Re = 4 m/(pi d mu_0) throat Reynolds number
 * Validity    (2): 200 to 475 K, p_0 <= 500 kPa, gas with the second virial coefficient of dry air and c_p = 3.5 R of the ideal gas
 *             (3): Re from 2.1e4 to 3.2e7, cylindrical 3.5e5 to 1.1e7; `outside` names what is broken
 * Source      [iso9300] for (1) and (3), coefficients from memory; (2) by its definition    Check published/iso9300.test.ts
 */
import { findRoot, requirePositive } from "../numerics/index.ts";
import { GAS_CONSTANT_DRY_AIR, MOLAR_GAS_CONSTANT } from "../quantities/index.ts";
import { airViscosity } from "./air-transport.ts";
import { dryAirVirial } from "./virial-coefficients.ts";

const HEAT_CAPACITY = 3.5 * MOLAR_GAS_CONSTANT;

export type CriticalFlow = { readonly factor: number; readonly throatPressureRatio: number };

/** (2) for dry air, by expanding a gas of the second virial coefficient at constant entropy. */
export function criticalFlowFactor(pressure: number, temperature: number): CriticalFlow {
  requirePositive("pressure", pressure);
  const rest = entropyAndEnthalpy(pressure, temperature);
  const flux = (ratio: number): number => {
    const p = pressure * ratio;
    const outcome = findRoot((t) => entropyAndEnthalpy(p, t).entropy - rest.entropy, {
      low: temperature * 0.6,
      high: temperature,
    });
    if (outcome.status !== "found") throw new Error(`Assertion failed: no isentrope at ratio ${ratio}`);
    const t = outcome.root;
    const rootOfTwiceDrop = Math.sqrt(2 * Math.max(0, rest.enthalpy - entropyAndEnthalpy(p, t).enthalpy));
    return (p / (MOLAR_GAS_CONSTANT * t + dryAirVirial(t) * p)) * rootOfTwiceDrop;
  };
  const throatPressureRatio = maximise(flux, 0.4, 0.7);
  return {
    factor: (flux(throatPressureRatio) * Math.sqrt(MOLAR_GAS_CONSTANT * temperature)) / pressure,
    throatPressureRatio,
  };
}

export type CriticalNozzle = {
  readonly throat: "toroidal" | "cylindrical";
  /** m */
  readonly throatDiameter: number;
};

export type CriticalNozzleFlow = {
  readonly massFlow: number;
  readonly dischargeCoefficient: number;
  readonly reynolds: number;
  readonly criticalFlowFactor: number;
  /** of the coefficient: half of the 0.3 % stated at 95 % */
  readonly relativeStandardUncertainty: number;
  readonly outside: readonly string[];
};

/** (1) with (2) and (3), dry air. Choking itself (outlet below about 0.5 of the inlet, or what the maker states) is the user's to see to. */
export function criticalNozzleFlow(
  nozzle: CriticalNozzle,
  inlet: { readonly pressure: number; readonly temperature: number },
): CriticalNozzleFlow {
  const { throatDiameter: d } = nozzle;
  requirePositive("throat diameter", d);
  const { factor } = criticalFlowFactor(inlet.pressure, inlet.temperature);
  const ideal = ((Math.PI / 4) * d * d * factor * inlet.pressure) / Math.sqrt(GAS_CONSTANT_DRY_AIR * inlet.temperature);
  const toReynolds = 4 / (Math.PI * d * airViscosity(inlet.temperature));
  let coefficient = 1;
  for (let pass = 0; pass < 20; pass++) coefficient = dischargeOf(nozzle.throat, coefficient * ideal * toReynolds);
  const reynolds = coefficient * ideal * toReynolds;
  const [low, high] = REYNOLDS[nozzle.throat];
  const outside =
    reynolds < low || reynolds > high
      ? [`throat Reynolds number ${reynolds.toPrecision(3)} outside ${low} to ${high}`]
      : [];
  return {
    massFlow: coefficient * ideal,
    dischargeCoefficient: coefficient,
    reynolds,
    criticalFlowFactor: factor,
    relativeStandardUncertainty: 0.0015,
    outside,
  };
}

const REYNOLDS = { toroidal: [2.1e4, 3.2e7], cylindrical: [3.5e5, 1.1e7] } as const;

function dischargeOf(throat: CriticalNozzle["throat"], reynolds: number): number {
  return throat === "toroidal" ? 0.9959 - 2.72 * reynolds ** -0.5 : 0.9976 - 0.1388 * reynolds ** -0.2;
}

/** Per mole, from an arbitrary zero; the molar mass cancels in C*. */
function entropyAndEnthalpy(p: number, t: number): { entropy: number; enthalpy: number } {
  const step = 0.01;
  const b = dryAirVirial(t);
  const slope = (dryAirVirial(t + step) - dryAirVirial(t - step)) / (2 * step);
  return {
    entropy: HEAT_CAPACITY * Math.log(t) - MOLAR_GAS_CONSTANT * Math.log(p) - slope * p,
    enthalpy: HEAT_CAPACITY * t + p * (b - t * slope),
  };
}

/** Golden section; the flux has one maximum in the bracket. */
function maximise(f: (x: number) => number, low: number, high: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  while (b - a > 1e-9) {
    const inner = b - golden * (b - a);
    const outer = a + golden * (b - a);
    if (f(inner) > f(outer)) b = outer;
    else a = inner;
  }
  return (a + b) / 2;
}
