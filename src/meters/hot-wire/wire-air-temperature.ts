/**
 * What is left of the air temperature in a compensated wire: conductivity and viscosity of the air at the wire.
 *
 * Equation    G = pi l k(T_m) Nu(Re, Pr),  Re = (m/A_p) d/mu(T_m),  T_m = T_a + dT/2                              (1)
 *             reading/truth = m' /m with G(m', T_cal) = G(m, T_a)                                                (2)
 * Symbols     l, d m wire | A_p m2 tube | dT K overheat, held | T_cal K air of calibration
 * Validity    Re within the correlation of Kramers (heat-loss.ts); 200 to 450 K film temperature
 * Assumes     the bridge holds dT whatever the air temperature; pressure does not enter: the wire senses mass flux
 * Source      [kramers1946], [us1976] for k and mu                           Check  published/hot-wire.test.ts
 */
import { airConductivity, airViscosity } from "../../gas/index.ts";
import { findRoot, requirePositive } from "../../numerics/index.ts";
import { kramersNusselt } from "../heat-loss.ts";

export type WireGeometry = {
  readonly diameter: number;
  readonly length: number;
  readonly tubeArea: number;
  readonly overheat: number;
};

/** Of air, which changes by 3 % over 250 to 450 K: taken constant. */
const PRANDTL = 0.71;

/** (1), W/K */
export function geometricConductance(wire: WireGeometry, massFlow: number, airTemperature: number): number {
  requirePositive("tube area", wire.tubeArea);
  const film = airTemperature + wire.overheat / 2;
  const reynolds = (Math.abs(massFlow) * wire.diameter) / (wire.tubeArea * airViscosity(film));
  return Math.PI * wire.length * airConductivity(film) * kramersNusselt(reynolds, PRANDTL).nusselt;
}

/** (2) */
export function wireTemperatureRatio(
  wire: WireGeometry,
  at: { readonly massFlow: number; readonly airTemperature: number; readonly calibrationTemperature: number },
): number {
  requirePositive("mass flow", at.massFlow);
  const conductance = geometricConductance(wire, at.massFlow, at.airTemperature);
  const outcome = findRoot(
    (ratio) => geometricConductance(wire, ratio * at.massFlow, at.calibrationTemperature) - conductance,
    { low: 0, high: 4 },
  );
  if (outcome.status !== "found") throw new Error("Assertion failed: the reading lies within four times the flow");
  return outcome.root;
}
