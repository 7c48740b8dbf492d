/**
 * The trims that an engine's healthy tolerances add up to, worked out at idle and at light cruise in air of a common humidity.
 *
 * Equation    trim = ln(air/believed) - ln(delivered/commanded) - ln(AFR_true/AFR_assumed) + lambda bias - h - purge  (1)
 *             h = ln(1 + w), and ln(1 + 1.608 w) more where the pressure doses: the computer takes moist air for dry
 * Symbols     as in engine-parts.ts; w kg/kg humidity; first order in every tolerance
 * Validity    tolerances of a few per cent; engines without closed loop have none (0)
 * Source      section 5 of the design, fuel witness; w = 0.0063 (vapour of 1 kPa) as in the air of [j1349]
 * Check       healthy-engines.test.ts: trims of whole recordings
 */
import { fuelProperties } from "../engine/index.ts";
import { AIR_WATER_MOLAR_RATIO } from "../quantities/index.ts";
import type { EngineDesign } from "./engine-design.ts";
import type { EngineParts } from "./engine-parts.ts";
import { variationAt } from "./smooth-variation.ts";

/** 6 % is called healthy; the rest of it is left for other weather, charge temperature and the probe's limit cycle. */
export const LARGEST_HEALTHY_TRIM = 0.045;
const COMMON_HUMIDITY = 0.0063;
const PURGE_FLOW = 0.08e-3; // kg/s of air through the valve fully open at cruise, choked

/** Typical points: speed 1/s, manifold pressure Pa, share of the air displaced by residual gas, flow kg/s a litre, purge duty. */
const POINTS = [
  { speed: 13, pressure: 35e3, residualShare: 0.14, flowPerLitre: 1.6e-3, purge: 0 },
  { speed: 42, pressure: 45e3, residualShare: 0.1, flowPerLitre: 8e-3, purge: 1 },
];

export function largestTrim(design: EngineDesign, parts: EngineParts): number {
  if (design.lambdaProbe === "none") return 0;
  return Math.max(...POINTS.map((point) => Math.abs(trimAt(design, parts, point))));
}

function trimAt(design: EngineDesign, parts: EngineParts, point: (typeof POINTS)[number]): number {
  const { speed, pressure, residualShare, flowPerLitre, purge } = point;
  const massFlow = flowPerLitre * design.displacement * 1e3;
  const byPressure = design.computer.dosedBy === "pressure";
  const believed = byPressure
    ? parts.pressureBias / pressure -
      parts.temperatureBias / 300 -
      parts.breathingScale -
      variationAt(parts.breathingShape, speed, pressure) +
      residualShare * (parts.residualStrength - 1)
    : parts.meterScale + variationAt(parts.meterShape, Math.log(massFlow));
  const fuel = fuelProperties(design.fuel);
  const fuelFlow = massFlow / fuel.stoichiometricAirFuelRatio;
  const open = fuelFlow / ((speed * design.cylinders) / 2) / (design.injectors.flow * fuel.density);
  const delivered = parts.injectorScale - parts.injectorDeadTime / open;
  const humidity = COMMON_HUMIDITY * (1 + (byPressure ? AIR_WATER_MOLAR_RATIO : 0));
  const purged = (purge * parts.purgeRichness * PURGE_FLOW) / fuelFlow;
  return -believed - delivered - parts.fuelRatio + parts.lambdaBias - humidity - purged;
}
