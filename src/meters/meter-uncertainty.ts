/**
 * Uncertainty of the mass flow a meter reads: its curve, its signal, its supply and ground, the air it is told.
 *
 * Equation    m = (q m_cal(s') + c)(rho/rho_cal)^k i,  s' = (s - g) r_nom/r                                       (1)
 *             propagated by the GUM (numerics/uncertainty-budget.ts)
 * Symbols     s V (a voltage), Hz, s or 1 | g V ground shift, r, r_nom V supply and its nominal (voltage signals alone) | q, c 1, kg/s error of
 *             the curve in the air it was taken in | i 1 installation | k sensed-density.ts
 * Validity    as the curve; inputs independent
 * Source      [gum2008] 5.1                                                  Check  describe-curve.test.ts
 */
import { idealMoistAirDensity, type MoistAir } from "../gas/index.ts";
import { propagateUncertainty, type UncertainInput, type UncertaintyBudget } from "../numerics/index.ts";
import { QUALITY } from "../quantities/index.ts";
import { densityFactor, meterFlow } from "./meter-flow.ts";
import type { PreparedMeter } from "./prepare-meter.ts";

/** Standard uncertainties; all zero where not given. */
export type MeterUncertainties = {
  /** V, Hz, s or 1 */
  readonly signal?: number;
  /** V, of a voltage signal */
  readonly ground?: number;
  /** relative, of the supply of a voltage signal that is not read as a ratio */
  readonly supply?: number;
  /** kg/s, of the curve in the air of calibration, at this signal */
  readonly curve?: number;
  /** relative, of the curve */
  readonly curveRelative?: number;
  /** Pa and K, of the air at the meter */
  readonly pressure?: number;
  readonly temperature?: number;
  /** relative, what the installation does: bends, filter seat, pulsation */
  readonly installation?: number;
};

/** Budget in kg/s; null where the signal gives no flow. */
export function meterUncertainty(
  meter: PreparedMeter,
  signal: number,
  air: MoistAir,
  uncertainties: MeterUncertainties,
): UncertaintyBudget | null {
  if (meterFlow(meter, signal, air).quality === QUALITY.notANumber) return null;
  const voltage = meter.signalUnit === "V";
  const input = (name: string, value: number, standardUncertainty = 0): UncertainInput => ({
    name,
    value,
    standardUncertainty,
  });
  const u = uncertainties;
  const inputs = [
    input("signal", signal, u.signal),
    input("ground shift", 0, voltage ? u.ground : 0),
    input("supply", 1, voltage ? u.supply : 0),
    input("curve", 0, u.curve),
    input("curve, relative", 1, u.curveRelative),
    input("pressure", air.pressure, u.pressure),
    input("temperature", air.temperature, u.temperature),
    input("installation", 1, u.installation),
  ];
  return propagateUncertainty(
    ([s = 0, ground = 0, supply = 1, curve = 0, scale = 1, pressure = 0, temperature = 0, installation = 1]) => {
      const seen = (s - ground) / supply;
      const moved = { ...air, pressure, temperature };
      const curveError = curve * densityFactor(meter, idealMoistAirDensity(moved));
      return (meterFlow(meter, seen, moved).massFlow * scale + curveError) * installation;
    },
    inputs,
  );
}
