/**
 * Air told by the manifold pressure sensor: its voltage to pressure, pressure to the air that the engine draws.
 *
 * Equation    m = eta p(V) V_d N/(2 R T)                                                                        (1)
 * Symbols     m kg/s dry air | V V voltage, p Pa by pressure-sensor.ts | eta 1 volumetric efficiency referred to the manifold |
 *             V_d m3 displacement | N 1/s | T K charge
 * Validity    as pressure-sensor.ts and engine/speed-density.ts; `inside` false beyond the sensor's points. What displaces fresh air
 *             (vapour, fuel, recirculated gas) is the caller's factor in eta
 * Source      [heywood1988] eq. (2.27)                                       Check  published/heywood1988.test.ts
 */
import { type Breathing, speedDensityFlow } from "../../engine/index.ts";
import { requirePositive } from "../../numerics/index.ts";
import { type PressureSensor, pressureOfVoltage, type SensorSupply, voltageOfPressure } from "./pressure-sensor.ts";

export type PressureSideState = SensorSupply &
  Omit<Breathing, "manifoldPressure"> & {
    readonly ambientPressure: number;
    readonly volumetricEfficiency: number;
  };

export function pressureSideAir(
  sensor: PressureSensor,
  reading: PressureSideState & { readonly voltage: number },
): { readonly massFlow: number; readonly pressure: number; readonly inside: boolean } {
  const { pressure, inside } = pressureOfVoltage(sensor, reading);
  const manifoldPressure = Math.max(0, pressure);
  return { massFlow: speedDensityFlow({ ...reading, manifoldPressure }), pressure, inside };
}

/** The inverse of (1): the voltage that this air would give. */
export function pressureSideVoltage(sensor: PressureSensor, massFlow: number, state: PressureSideState): number {
  const perPascal = speedDensityFlow({ ...state, manifoldPressure: 1 });
  requirePositive("flow of one pascal", perPascal);
  return voltageOfPressure(sensor, { ...state, pressure: massFlow / perPascal });
}
