/**
 * The manifold pressure's word on the air, by speed-density.
 *
 * Equation    y = ln(p V N / 2 R T) - ln(1 + 1.608 w + phi eps) + ln eta(N, p)
 * Symbols     p Pa | T K charge | w humidity ratio | phi eps moles of fuel vapour per mole of air | eta prior mean of breathing
 * Source      speed-density [heywood1988] (2.27)
 */
import { fuelVapourDisplacement, speedDensityFlow } from "../engine/index.ts";
import { AIR_WATER_MOLAR_RATIO } from "../quantities/index.ts";
import { logBreathingMean } from "./breathing-mean.ts";
import { motoredShare } from "./motored-breathing.ts";
import { find } from "./readings.ts";
import { HUMIDITY_RATIO, type TallyWitness } from "./tally-model.ts";
import { addBound, dosesBy, effectOn, type RowContext } from "./witness-row.ts";

export function addPressure(context: RowContext): void {
  const { point, i, engine, physics, throttle, a, row, fuels, dosedBy, ends } = context;
  const pressure = find(point, "manifoldPressure", null);
  if (pressure === null || !(pressure.mean > 0)) return;
  const temperature = find(point, "chargeTemperature", null) ?? find(point, "intakeTemperature", null);
  const speed = find(point, "engineSpeed", null)!;
  const filled = speedDensityFlow({
    manifoldPressure: pressure.mean,
    displacement: engine.displacement,
    engineSpeed: speed.mean,
    chargeTemperature: physics.intakeTemperature[i]!,
    volumetricEfficiency: 1,
  });
  const coolant = find(point, "coolantTemperature", null)?.mean ?? null;
  const value = Math.log(filled) + logBreathingMean(engine, physics, a, i, coolant);
  const injection = engine.injection ?? (engine.ignition === "spark" ? "port" : "direct");
  const cut = point.states.includes("fuel-cut");
  const vapour = cut ? 0 : fuelVapourDisplacement(engine.fuel, injection);
  const displaced = Math.log1p(AIR_WATER_MOLAR_RATIO * HUMIDITY_RATIO + vapour);
  const relative = (x: { readonly mean: number; readonly variance: number }) => x.variance / x.mean ** 2;
  if (ends.pressure !== null && pressure.high >= ends.pressure) {
    // The engine computer reads its own sensor, which may go further than the channel: by what it doses here nobody knows.
    addBound(context, "pressure", value - displaced, 1, relative(pressure) + relative(speed));
    return;
  }
  row.y.set("pressure", value - displaced);
  const motored = motoredShare(point, pressure.mean, physics.barometer[i]!);
  if (motored > 0) row.shared.push({ variance: (a.motoredScatter * motored) ** 2, effect: effectOn(["pressure"]) });
  const fed = dosesBy(engine) === "pressure" ? fuels.map((f) => f.id) : [];
  for (const id of fed) dosedBy.set(id, value);
  const both = effectOn(["pressure", ...fed]);
  const throttled = throttle !== null && throttle.area[i]! > 0;
  const passedOn = (size: number): ReadonlyMap<TallyWitness, number> =>
    throttled ? new Map([...both, ["throttle", size]]) : both;
  row.shared.push({ variance: relative(pressure), effect: passedOn(throttled ? throttle.pressureEffect[i]! : 0) });
  row.shared.push({ variance: relative(speed), effect: both });
  if (temperature !== null) row.shared.push({ variance: relative(temperature), effect: passedOn(0.5) });
}
