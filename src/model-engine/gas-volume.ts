/**
 * Gas in a volume as mass, internal energy and burnt mass; moving gas from one to another keeps all three to rounding.
 *
 * Equation    p = (g - 1) U/V,  T = (g - 1) U/(m R);  dm from a to b takes dm h_a with it, h = g U/m               (1)
 *             V changed without heat:  U V^(g - 1) stays                                                        (2)
 * Symbols     m kg | U J | V m3 | g 1.35, R 287 J/(kg K), constant
 * Validity    m > 0. One g for air and burnt gas: real ones run from 1.40 (cold air) to 1.25 (hot burnt gas)
 * Source      [heywood1988] 4.4 for the range of g; (1), (2) definitions        Check crank-cylinder.test.ts
 */
import { GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";

export const GAMMA = 1.35;
const R = GAS_CONSTANT_DRY_AIR;

export type GasVolume = { mass: number; energy: number; burnt: number; volume: number };

export function gasVolume(pressure: number, temperature: number, volume: number, burntShare = 0): GasVolume {
  const mass = (pressure * volume) / (R * temperature);
  return { mass, energy: (pressure * volume) / (GAMMA - 1), burnt: burntShare * mass, volume };
}

/** Makes a reservoir what it was: gas at a state, whatever has been drawn from it or let into it. */
export function refill(gas: GasVolume, pressure: number, temperature: number, burntShare = 0): void {
  gas.mass = (pressure * gas.volume) / (R * temperature);
  gas.energy = (pressure * gas.volume) / (GAMMA - 1);
  gas.burnt = burntShare * gas.mass;
}

export function pressureOf(gas: GasVolume): number {
  return ((GAMMA - 1) * gas.energy) / gas.volume;
}

export function temperatureOf(gas: GasVolume): number {
  return ((GAMMA - 1) * gas.energy) / (gas.mass * R);
}

/** Moves `amount` kg from `a` to `b`; negative the other way. */
export function move(a: GasVolume, b: GasVolume, amount: number): void {
  const from = amount >= 0 ? a : b;
  const to = amount >= 0 ? b : a;
  const moved = Math.abs(amount);
  const enthalpy = (GAMMA * from.energy * moved) / from.mass;
  const burnt = (from.burnt * moved) / from.mass;
  from.mass -= moved;
  to.mass += moved;
  from.energy -= enthalpy;
  to.energy += enthalpy;
  from.burnt -= burnt;
  to.burnt += burnt;
}

/** (2); returns the work done by the gas, J. */
export function changeVolume(gas: GasVolume, volume: number): number {
  const before = gas.energy;
  gas.energy *= (gas.volume / volume) ** (GAMMA - 1);
  gas.volume = volume;
  return before - gas.energy;
}

/**
 * kg that flow from `a` to `b` through an effective area in `dt`: the orifice flow, at most half of what would make the pressures
 * equal, so that wide openings between small volumes do not swing.
 */
export function throughHole(a: GasVolume, b: GasVolume, area: number, dt: number, flow: OrificeFlow): number {
  if (area === 0) return 0;
  const pa = pressureOf(a);
  const pb = pressureOf(b);
  const wanted = flow(pa, pb, area / Math.sqrt(R * temperatureOf(a)), area / Math.sqrt(R * temperatureOf(b))) * dt;
  const stiffness =
    (GAMMA * (GAMMA - 1) * a.energy) / (a.mass * a.volume) + (GAMMA * (GAMMA - 1) * b.energy) / (b.mass * b.volume);
  const equalising = Math.abs(pa - pb) / stiffness;
  return Math.min(Math.max(wanted, -0.5 * equalising), 0.5 * equalising);
}

export type OrificeFlow = (first: number, second: number, forward: number, backward: number) => number;
