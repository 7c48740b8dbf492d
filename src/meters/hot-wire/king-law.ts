/**
 * The wire's law: heat taken by the stream against mass flow, and the signal of the three ways to drive a wire.
 *
 * Equation    G = A + B |m|^n                                                    conductance to the air           (1)
 *             constant temperature   E^2/R_s = G (T_w - T_a)                     E = sqrt(R_s G dT)               (2)
 *             constant current       I^2 R_w = G (T_w - T_a),  R_w = R_0 (1 + a (T_w - T_0)),  V = I R_w          (3)
 *             constant voltage       V^2/R_w = G (T_w - T_a),  I = V/R_w                                          (4)
 * Symbols     G W/K | m kg/s | n 1 | E, V V | R_s ohm through which E is the voltage | R ohm | a 1/K | I A | T K
 * Validity    0 < n < 1, A >= 0, B > 0 (asserted); T_w > T_a. (3): G > a R_0 I^2, else the wire burns and the result is null
 * Assumes     A, B do not change with air temperature: the remainder is in wire-air-temperature.ts
 * Source      [king1914] with free exponent; 0.45 to 0.5 in use [collis1959]       Check  published/hot-wire.test.ts
 */
import { requirePositive, requireWithin } from "../../numerics/index.ts";

export type KingLaw = {
  /** W/K at rest */
  readonly still: number;
  /** W/K per (kg/s)^n */
  readonly slope: number;
  readonly exponent: number;
};

/** (1); direction is lost: the same for m and -m */
export function wireConductance(law: KingLaw, massFlow: number): number {
  requireWithin("exponent", law.exponent, 0.05, 1);
  return law.still + law.slope * Math.abs(massFlow) ** law.exponent;
}

/** The inverse of (1), kg/s >= 0; below the conductance at rest 0 with `inside` false. */
export function massFlowOfConductance(
  law: KingLaw,
  conductance: number,
): { readonly massFlow: number; readonly inside: boolean } {
  requirePositive("slope", law.slope);
  const above = conductance - law.still;
  return above <= 0
    ? { massFlow: 0, inside: above === 0 }
    : { massFlow: (above / law.slope) ** (1 / law.exponent), inside: true };
}

export type ConstantTemperatureDrive = {
  readonly seriesResistance: number;
  /** K, wire above air; a bridge with a compensating resistor holds it nearly constant */
  readonly overheat: number;
};

/** (2), V */
export function constantTemperatureVoltage(law: KingLaw, drive: ConstantTemperatureDrive, massFlow: number): number {
  requirePositive("overheat", drive.overheat);
  return Math.sqrt(drive.seriesResistance * drive.overheat * wireConductance(law, massFlow));
}

export function constantTemperatureFlow(law: KingLaw, drive: ConstantTemperatureDrive, voltage: number) {
  return massFlowOfConductance(law, voltage ** 2 / (drive.seriesResistance * drive.overheat));
}

export type WireElement = {
  /** ohm at `referenceTemperature` */
  readonly resistance: number;
  readonly temperatureCoefficient: number;
  readonly referenceTemperature: number;
};

/** (3): V over the wire; null where it would burn */
export function constantCurrentVoltage(
  law: KingLaw,
  wire: WireElement,
  at: { readonly current: number; readonly airTemperature: number; readonly massFlow: number },
): number | null {
  const conductance = wireConductance(law, at.massFlow);
  const heating = at.current ** 2 * wire.resistance;
  const margin = conductance - heating * wire.temperatureCoefficient;
  if (margin <= 0) return null;
  const rise = (heating * (1 + wire.temperatureCoefficient * (at.airTemperature - wire.referenceTemperature))) / margin;
  return at.current * resistanceAt(wire, at.airTemperature + rise);
}

export function constantCurrentFlow(
  law: KingLaw,
  wire: WireElement,
  at: { readonly current: number; readonly airTemperature: number; readonly voltage: number },
) {
  const hot = at.voltage / at.current;
  return massFlowOfConductance(law, (at.current ** 2 * hot) / riseOf(wire, hot, at.airTemperature));
}

/** (4): A through the wire */
export function constantVoltageCurrent(
  law: KingLaw,
  wire: WireElement,
  at: { readonly voltage: number; readonly airTemperature: number; readonly massFlow: number },
): number {
  // G x R_a (1 + a' x) = V^2 with x the rise: the positive root of a quadratic
  const cold = resistanceAt(wire, at.airTemperature);
  const slope = wire.resistance * wire.temperatureCoefficient;
  const power = at.voltage ** 2 / wireConductance(law, at.massFlow);
  const rise = (2 * power) / (cold + Math.sqrt(cold * cold + 4 * slope * power));
  return at.voltage / (cold + slope * rise);
}

export function constantVoltageFlow(
  law: KingLaw,
  wire: WireElement,
  at: { readonly voltage: number; readonly airTemperature: number; readonly current: number },
) {
  const hot = at.voltage / at.current;
  return massFlowOfConductance(law, at.voltage ** 2 / hot / riseOf(wire, hot, at.airTemperature));
}

function resistanceAt(wire: WireElement, temperature: number): number {
  return wire.resistance * (1 + wire.temperatureCoefficient * (temperature - wire.referenceTemperature));
}

function riseOf(wire: WireElement, hot: number, airTemperature: number): number {
  const rise = (hot - resistanceAt(wire, airTemperature)) / (wire.resistance * wire.temperatureCoefficient);
  requirePositive("temperature rise of the wire", rise);
  return rise;
}
