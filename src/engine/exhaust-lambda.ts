/**
 * Lambda from the composition of the exhaust gas.
 *
 * Equation    lambda = ([CO2] + [CO]/2 + [O2] + [NO]/2 + (H/4 * K/(K + [CO]/[CO2]) - O/2)([CO2] + [CO]))
 *                      / ((1 + H/4 - O/2)([CO2] + [CO] + n [HC]))                                                (1)
 *             [H2O] = (H/2) ([CO2] + [CO])/(1 + [CO]/(K [CO2]))      water of combustion over dry gas             (2)
 * Symbols     [x] mole fractions | H, O atoms per carbon atom of the fuel | K = 3.5 water-gas constant | n carbon atoms in the unit in
 *             which hydrocarbons are stated: 6 for hexane of an infra-red bench, 1 for a flame detector (C1)
 * Validity    [CO2] > 0 (asserted); a warm engine with balanced gas: unburnt fuel beyond a few thousand ppm, misfire or air added in
 *             the exhaust bend it. Exact for a gas in water-gas balance at K = 3.5; 0.3 % off at lambda 0.8 where K is 3.7 (tested)
 * Assumes     all gases on one basis. (1) does not change when all are diluted alike, so wet or dry does not matter, a mixture does:
 *             bring every gas to dry first (`toDryBasis`)
 * Source      [brettschneider1979]; (2) water balance of the same reaction   Check published/brettschneider1979.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";

/** K of (1) [brettschneider1979] */
export const WATER_GAS_CONSTANT = 3.5;

export type ExhaustGas = {
  /** mole fractions, 0.15 for 15 % */
  readonly carbonDioxide: number;
  readonly carbonMonoxide: number;
  readonly oxygen: number;
  readonly nitricOxide: number;
  /** mole fraction of molecules with `carbonPerHydrocarbon` carbon atoms */
  readonly hydrocarbons: number;
  readonly carbonPerHydrocarbon: number;
};

export type FuelAtoms = { readonly hydrogenPerCarbon: number; readonly oxygenPerCarbon: number };

export function exhaustLambda(gas: ExhaustGas, fuel: FuelAtoms, waterGasConstant = WATER_GAS_CONSTANT): number {
  const { carbonDioxide, carbonMonoxide, oxygen, nitricOxide, hydrocarbons, carbonPerHydrocarbon } = gas;
  const { hydrogenPerCarbon: h, oxygenPerCarbon: o } = fuel;
  requirePositive("carbon dioxide", carbonDioxide);
  const burntCarbon = carbonDioxide + carbonMonoxide;
  const waterShare = waterGasConstant / (waterGasConstant + carbonMonoxide / carbonDioxide);
  const oxygenFound =
    carbonDioxide + carbonMonoxide / 2 + oxygen + nitricOxide / 2 + ((h / 4) * waterShare - o / 2) * burntCarbon;
  const oxygenNeeded = (1 + h / 4 - o / 2) * (burntCarbon + carbonPerHydrocarbon * hydrocarbons);
  return oxygenFound / oxygenNeeded;
}

/** (2): moles of combustion water per mole of dry exhaust gas. */
export function combustionWaterPerDryGas(
  gas: Pick<ExhaustGas, "carbonDioxide" | "carbonMonoxide">,
  fuel: FuelAtoms,
): number {
  const { carbonDioxide, carbonMonoxide } = gas;
  requirePositive("carbon dioxide", carbonDioxide);
  const hydrogenToWater = 1 / (1 + carbonMonoxide / (WATER_GAS_CONSTANT * carbonDioxide));
  return (fuel.hydrogenPerCarbon / 2) * (carbonDioxide + carbonMonoxide) * hydrogenToWater;
}

/** Mole fraction in dry gas from that in wet gas; `waterPerDryGas` as from `combustionWaterPerDryGas`, plus the humidity of the air. */
export function toDryBasis(wetFraction: number, waterPerDryGas: number): number {
  requireWithin("water per dry gas", waterPerDryGas, 0, 10);
  return wetFraction * (1 + waterPerDryGas);
}

/** The inverse. */
export function toWetBasis(dryFraction: number, waterPerDryGas: number): number {
  requireWithin("water per dry gas", waterPerDryGas, 0, 10);
  return dryFraction / (1 + waterPerDryGas);
}
