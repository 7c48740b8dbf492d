/**
 * What a witness says that stands alone: the plain formula, because there is nothing to reconcile it with.
 *
 * Equation    pressure: m = eta p V N / (2 R T), eta as stated or assumed;  meter: its reading
 * Source      [heywood1988] (2.27)
 */
import { speedDensityFlow } from "../../engine/index.ts";
import type { TallyModel } from "../../tally/index.ts";

export function soleWord(model: TallyModel, i: number): { readonly air: number; readonly sd: number } {
  const { engine, assumptions, physics } = model;
  if (model.witnesses[0] !== "pressure") return { air: Math.exp(model.y[i]!), sd: assumptions.meterScale };
  const stated = engine.volumetricEfficiency;
  const air = speedDensityFlow({
    manifoldPressure: physics.pressure[i]!,
    displacement: engine.displacement,
    engineSpeed: physics.speed[i]!,
    chargeTemperature: physics.intakeTemperature[i]!,
    volumetricEfficiency: stated?.value ?? assumptions.breathingMean,
  });
  const level =
    stated === null ? assumptions.breathingUnknown : (stated.sd ?? assumptions.breathingStated) / stated.value;
  return { air, sd: level };
}
