/**
 * A hose and a damping volume before a pressure sensor: how slow they make it.
 *
 * Equation    tau = R C,  R = 128 mu L/(pi d^4),  C = V/p                                                       (1)
 * Symbols     tau s | mu Pa s | L, d m hose | V m3 volume at the sensor with half of the hose | p Pa mean pressure
 * Validity    laminar flow in the hose, isothermal volume; lengths > 0 (asserted). A restrictor is taken as a short narrow hose
 * Source      [incropera2002] section 8.3 (laminar pipe); linear capacity of a gas at constant temperature
 */
import { airViscosity } from "../../gas/index.ts";
import { requirePositive } from "../../numerics/index.ts";

export function hoseTimeConstant(hose: {
  readonly length: number;
  readonly bore: number;
  readonly sensorVolume: number;
  readonly pressure: number;
  readonly temperature: number;
}): number {
  const { length, bore, sensorVolume, pressure, temperature } = hose;
  requirePositive("hose length", length);
  requirePositive("hose bore", bore);
  requirePositive("pressure", pressure);
  const resistance = (128 * airViscosity(temperature) * length) / (Math.PI * bore ** 4);
  const volume = sensorVolume + ((Math.PI / 4) * bore ** 2 * length) / 2;
  return (resistance * volume) / pressure;
}
