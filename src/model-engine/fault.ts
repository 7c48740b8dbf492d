/**
 * Planted faults: the causes of the catalogue as physical changes of the model engine, of any size and in combination.
 * The meaning of each size is the meaning the findings report; the unit of each stands in `PLANTABLE`.
 */
export const PLANTABLE = {
  "meter-fouled": "1",
  "meter-scaled": "1",
  "meter-offset": "g/s",
  "meter-curve-wrong": "1",
  "vane-tilted": "1",
  "meter-pulsation": "1",
  "intake-restricted": "kPa",
  "leak-before-throttle": "mm2",
  "boost-leak": "mm2",
  "manifold-leak": "mm2",
  "throttle-area-changed": "mm2",
  "map-biased": "kPa",
  "map-scaled": "1",
  "intake-temperature-biased": "K",
  "baro-biased": "kPa",
  "egr-stuck-open": "mm2",
  "egr-low-flow": "1",
  "breathing-reduced": "1",
  "valve-timing-shifted": "deg",
  misfire: "1",
  "fuel-delivery-scaled": "1",
  "fuel-supply-limited": "g/s",
  "fuel-pressure-reference": "kPa",
  "fuel-unmetered": "g/s",
  "fuel-composition": "1",
  "injector-offset": "ms",
  "exhaust-air-added": "g/s",
  "lambda-biased": "1",
} as const;

export const USUAL_LOSS = 0.25;

export type PlantableCause = keyof typeof PLANTABLE;

export type Fault = {
  readonly cause: PlantableCause;
  readonly size: number;
  /** of an engine with two banks, where the fault is one bank's alone (injection, firing, exhaust, probe) */
  readonly bank?: 1 | 2;
  /** map-scaled: about the barometer (a leaky hose) or about zero pressure (a wrong part); ambient where not given */
  readonly pivot?: "ambient" | "zero";
  /** meter-curve-wrong: error at 30 % of the largest flow, `size` being that at 70 %; the same where not given */
  readonly errorAt30?: number;
  /** fuel-supply-limited: share of the fuel missing at the largest flow; USUAL_LOSS where not given */
  readonly loss?: number;
};

/** All planted faults as one set of numbers in SI; neutral values where a cause is not planted. */
export type FaultState = {
  /** relative error at 70 % of the largest flow */
  readonly meterFouling: number;
  /** reading / truth */
  readonly meterScale: number;
  /** kg/s at idle flow, reading minus truth */
  readonly meterOffset: number;
  /** relative error at 30 % and 70 % of the largest flow */
  readonly curveError: { readonly at30: number; readonly at70: number };
  /** over full spring torque, positive closes the vane */
  readonly vaneTorque: number;
  /** relative error at its worst */
  readonly pulsation: number;
  /** Pa lost at the largest flow */
  readonly intakeRestriction: number;
  /** m2, of a sharp-edged hole */
  readonly leakBeforeThrottleArea: number;
  readonly boostLeakArea: number;
  readonly manifoldLeakArea: number;
  /** m2 effective, at idle */
  readonly throttleArea: number;
  /** Pa, reading minus truth; k about ambient and about zero; K; Pa */
  readonly pressureBias: number;
  readonly pressureScale: { readonly aboutAmbient: number; readonly aboutZero: number };
  readonly temperatureBias: number;
  readonly barometerBias: number;
  /** m2 effective; share of the expected flow that remains */
  readonly egrArea: number;
  readonly egrShare: number;
  /** relative change of efficiency at the largest flow, negative */
  readonly breathingChange: number;
  /** crank degrees, late is positive */
  readonly valveTimingLate: number;
  /** share of firings */
  readonly misfire: number;
  /** delivered / expected */
  readonly fuelScale: number;
  /** kg/s of fuel where delivery begins to fall, share missing at the largest flow */
  readonly fuelSupply: { readonly onset: number; readonly loss: number } | null;
  /** Pa too high at idle */
  readonly fuelPressureRise: number;
  /** kg/s */
  readonly fuelUnmetered: number;
  /** stoichiometric air-fuel ratio, true / assumed */
  readonly fuelRatio: number;
  /** s, true minus assumed dead time */
  readonly deadTimeError: number;
  /** kg/s at idle */
  readonly exhaustAir: number;
  /** reading minus truth */
  readonly lambdaBias: number;
};

export function faultState(faults: readonly Fault[]): FaultState {
  const of = (cause: PlantableCause) => faults.filter((f) => f.cause === cause);
  const sum = (cause: PlantableCause) => of(cause).reduce((s, f) => s + f.size, 0);
  const product = (cause: PlantableCause) => of(cause).reduce((s, f) => s * f.size, 1);
  const scaled = (pivot: "ambient" | "zero") =>
    of("map-scaled").reduce((s, f) => ((f.pivot ?? "ambient") === pivot ? s + f.size : s), 0);
  const supply = of("fuel-supply-limited")[0];
  return {
    meterFouling: sum("meter-fouled"),
    meterScale: product("meter-scaled"),
    meterOffset: sum("meter-offset") * 1e-3,
    curveError: {
      at30: of("meter-curve-wrong").reduce((s, f) => s + (f.errorAt30 ?? f.size), 0),
      at70: sum("meter-curve-wrong"),
    },
    vaneTorque: sum("vane-tilted"),
    pulsation: sum("meter-pulsation"),
    intakeRestriction: sum("intake-restricted") * 1e3,
    leakBeforeThrottleArea: sum("leak-before-throttle") * 1e-6,
    boostLeakArea: sum("boost-leak") * 1e-6,
    manifoldLeakArea: sum("manifold-leak") * 1e-6,
    throttleArea: sum("throttle-area-changed") * 1e-6,
    pressureBias: sum("map-biased") * 1e3,
    pressureScale: { aboutAmbient: scaled("ambient"), aboutZero: scaled("zero") },
    temperatureBias: sum("intake-temperature-biased"),
    barometerBias: sum("baro-biased") * 1e3,
    egrArea: sum("egr-stuck-open") * 1e-6,
    egrShare: product("egr-low-flow"),
    breathingChange: sum("breathing-reduced"),
    valveTimingLate: sum("valve-timing-shifted"),
    misfire: sum("misfire"),
    fuelScale: product("fuel-delivery-scaled"),
    fuelSupply: supply === undefined ? null : { onset: supply.size * 1e-3, loss: supply.loss ?? USUAL_LOSS },
    fuelPressureRise: sum("fuel-pressure-reference") * 1e3,
    fuelUnmetered: sum("fuel-unmetered") * 1e-3,
    fuelRatio: product("fuel-composition"),
    deadTimeError: sum("injector-offset") * 1e-3,
    exhaustAir: sum("exhaust-air-added") * 1e-3,
    lambdaBias: sum("lambda-biased"),
  };
}
