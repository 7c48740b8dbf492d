/**
 * Air stored in a volume between a meter and the valves, and how its pressure follows.
 *
 * Equation    storage = d/dt (p V/(R T)) = V/(R T) (dp/dt - (p/T) dT/dt)                                          (1)
 *             dp/dt = (R T/V) (m_in - m_out)                     at constant temperature                        (2)
 *             tau = 2 V/(eta V_d N)                              time constant of (2) with speed-density outflow   (3)
 * Symbols     storage kg/s, positive while filling | p Pa | V m3 | T K | R J/(kg K) | eta 1 | V_d m3 | N 1/s
 * Validity    V, T > 0 (asserted); a recording's mean flow over a stretch is off by (p_end - p_start) V/(R T)/duration
 * Source      [hendricks1990] (mean value model); mass balance                Check published/manifold-filling.test.ts
 */
import { requirePositive } from "../numerics/index.ts";
import { GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";

export type StoredGas = {
  readonly volume: number;
  readonly temperature: number;
  readonly gasConstant?: number;
};

/** (1) */
export function storageFlow(
  gas: StoredGas & { readonly pressureRate: number; readonly pressure?: number; readonly temperatureRate?: number },
): number {
  const { pressureRate, pressure = 0, temperatureRate = 0, temperature } = gas;
  return capacity(gas) * (pressureRate - (pressure / temperature) * temperatureRate);
}

/** (2) */
export function manifoldPressureRate(gas: StoredGas & { readonly inflow: number; readonly outflow: number }): number {
  return (gas.inflow - gas.outflow) / capacity(gas);
}

/** (3) */
export function manifoldTimeConstant(manifold: {
  readonly volume: number;
  readonly displacement: number;
  readonly engineSpeed: number;
  readonly volumetricEfficiency: number;
}): number {
  requirePositive("volumetric efficiency", manifold.volumetricEfficiency);
  requirePositive("engine speed", manifold.engineSpeed);
  requirePositive("displacement", manifold.displacement);
  return (2 * manifold.volume) / (manifold.volumetricEfficiency * manifold.displacement * manifold.engineSpeed);
}

/** kg per Pa: V/(R T) */
function capacity({ volume, temperature, gasConstant = GAS_CONSTANT_DRY_AIR }: StoredGas): number {
  requirePositive("volume", volume);
  requirePositive("temperature", temperature);
  return volume / (gasConstant * temperature);
}
