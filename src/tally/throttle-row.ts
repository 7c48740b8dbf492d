/**
 * The throttle's word on the air.
 *
 * Equation    H = A p_u Psi(p/p_u) / sqrt(R T_u),  y = ln H + ln(1 - storage/m) - ln(1 + w)
 * Symbols     A m2, p_u Pa, Psi as in throttle-state.ts | T_u K | storage kg/s of the manifold alone | m kg/s rough air
 * Assumes     level, stop, bypass and curve of the area are unknowns (throttle-unknowns.ts). Pressures are shared with the other
 *             witnesses through d ln H/d ln p, so that the witness fades towards p/p_u = 0.95, where that diverges
 * Source      [heywood1988] App. C
 */
import { orificeMassFlow } from "../gas/index.ts";
import { openingOf } from "./plate-opening.ts";
import { HUMIDITY_RATIO } from "./tally-model.ts";
import { effectOn, manifoldVolume, type RowContext, storageRate } from "./witness-row.ts";

const MOST_STORAGE = 0.5;
const STORAGE_DOUBT = 0.5;

export function addThrottle(context: RowContext): void {
  const { point, i, engine, physics, throttle, a, row } = context;
  if (throttle === null || !(throttle.area[i]! > 0) || !(physics.air[i]! > 0)) return;
  const temperature = physics.intakeTemperature[i]!;
  const flow = orificeMassFlow({
    dischargeCoefficient: 1,
    area: throttle.area[i]!,
    upstreamPressure: throttle.upstream[i]!,
    upstreamTemperature: temperature,
    downstreamPressure: physics.pressure[i]!,
  });
  const stored = storageRate(point, manifoldVolume(engine), temperature) / physics.air[i]!;
  if (!(flow > 0) || Math.abs(stored) > MOST_STORAGE) return;
  row.y.set("throttle", Math.log(flow) + Math.log1p(-stored) - Math.log1p(HUMIDITY_RATIO));
  const opening = openingOf(point)!;
  const bypassSd = throttle.bypassVaries ? a.idleValve * throttle.bypass[i]! : 0;
  const variance =
    opening.variance * throttle.openingEffect[i]! ** 2 +
    (a.throttleRatio * throttle.pressureEffect[i]!) ** 2 +
    bypassSd ** 2 +
    (STORAGE_DOUBT * stored) ** 2;
  row.shared.push({ variance, effect: effectOn(["throttle"]) });
}
