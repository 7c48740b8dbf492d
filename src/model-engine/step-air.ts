/** One step of the air: exhaust pressure, heat soak, areas with planted holes, draw of the cylinders, then the air path. */
import { chargeHeatingShare } from "../engine/index.ts";
import { stepAirPath } from "./air-path.ts";
import { efficiencyAt } from "./breathing.ts";
import { stepCrankAir } from "./crank-air.ts";
import type { Plant } from "./plant.ts";
import { timingShare } from "./planted-laws.ts";
import { HOLE_DISCHARGE, type PreparedEngine, PURGE_AREA } from "./prepared-engine.ts";

export function stepAir(e: PreparedEngine, plant: Plant, dt: number): void {
  const { air, flows, inputs, governor, computer } = plant;
  const { design, faults, ambient } = e;
  const { parts } = e.engine;
  const blown = (plant.charger.ratio - 1) * ambient.pressure;
  const turbine =
    design.charger === null ? 0 : 1.05 * blown + 4e3 * Math.min(1, (8 * plant.exhaustFlow) / e.largestFlow);
  plant.turbinePressure = ambient.pressure + turbine;
  plant.exhaustPressure = plant.turbinePressure + e.exhaustResistance * plant.exhaustFlow ** 2;

  // Air drawn in over warm parts at low flow; then compressed and cooled.
  const soak = parts.heatSoak / (1 + Math.abs(flows.suction) / e.idleFlow / 2);
  plant.intakeTemperature += (ambient.temperature + soak - plant.intakeTemperature) * (dt / 20);
  inputs.compressorRatio = plant.charger.ratio;
  inputs.inletTemperature = compressed(e, plant.intakeTemperature, plant.charger.ratio);
  inputs.throttleArea = Math.max(1e-7, governor.throttleArea * Math.exp(parts.throttleScale) + faults.throttleArea);
  // The purge line has a check valve: nothing flows out under boost.
  const purgeArea = air.pressure2 < ambient.pressure ? PURGE_AREA * computer.purge : 0;
  inputs.leakArea = HOLE_DISCHARGE * faults.manifoldLeakArea + purgeArea;
  inputs.boostLeakArea = HOLE_DISCHARGE * faults.boostLeakArea;
  inputs.egrArea =
    faults.egrArea + (design.egrValveArea ?? 0) * computer.egrOpening * Math.exp(parts.egrValveScale) * faults.egrShare;
  inputs.exhaustPressure = plant.exhaustPressure;

  const planted =
    (1 + faults.breathingChange * Math.min(1.5, (plant.exhaustFlow / e.largestFlow) ** 2)) *
    timingShare(faults.valveTimingLate, plant.speed, design.largestSpeed);
  // Fuel vapour in the port takes the place of air: one part in 1 + phi eps.
  const displaced = 1 + e.vapourDisplacement * Math.min(1.5, 1 / plant.lambda);
  const efficiency = efficiencyAt(e.breathing, plant.speed, air.pressure2) * planted;
  inputs.draw =
    (efficiency * design.displacement * plant.speed) / (2 * e.air.gasConstant * air.temperature2 * displaced);
  inputs.wallTemperature = plant.coolant;
  const through = Math.max(flows.cylinder, 1e-4);
  const share = Math.min(0.9, chargeHeatingShare(through));
  inputs.wallConductance = (parts.wallHeat * through * 3.5 * e.air.gasConstant * share) / (1 - share);

  if (plant.crank === null) stepAveraged(e, plant, dt);
  else stepCrankAir(e, plant, plant.crank, dt);
  plant.purgeFlow = purgeArea === 0 ? 0 : Math.max(0, (flows.leak * purgeArea) / inputs.leakArea);
  plant.meterFlow = flows.suction * (1 - e.unmeteredShare);
}

function stepAveraged(e: PreparedEngine, plant: Plant, dt: number): void {
  const { air, flows } = plant;
  const stored = () =>
    (air.pressure1 * e.air.volume1) / air.temperature1 + (air.pressure2 * e.air.volume2) / air.temperature2;
  const before = stored();
  stepAirPath(e.air, air, plant.inputs, flows, dt);
  plant.dryAir = (flows.cylinder * (1 - air.recirculated)) / (1 + e.ambient.humidityRatio);
  plant.recirculated = flows.cylinder * air.recirculated;
  plant.storage = (stored() - before) / e.air.gasConstant / dt;
}

function compressed(e: PreparedEngine, temperature: number, ratio: number): number {
  const { charger } = e.design;
  if (charger === null) return temperature;
  const rise = (temperature * (ratio ** (2 / 7) - 1)) / charger.efficiency;
  return temperature + rise * (1 - charger.coolerEffectiveness);
}
