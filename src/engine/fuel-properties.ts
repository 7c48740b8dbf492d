/**
 * What the air side needs to know of a fuel: stoichiometric ratio, molar mass of its vapour, density of the liquid.
 *
 * Equation    AFR = 34.56 (4 + y - 2z)/(12.011 + 1.008 y + 16 z)                    of CHyOz                    (1)
 *             mixtures: AFR by mass shares, 1/M by mass shares, density by volume shares                        (2)
 * Symbols     AFR kg dry air per kg fuel | y, z atoms of hydrogen and oxygen per carbon atom | M kg/mol
 * Validity    4 + y - 2z > 0 (asserted)
 * Assumes     air of O2 + 3.773 N2 (moist air is dearer by 1 + w, which is the caller's)
 * Source      [heywood1988] eq. (3.6), table D.4; fuels.json says where each component comes from
 * Check       published/heywood1988.test.ts
 */
import { requirePositive } from "../numerics/index.ts";
import type { FuelName } from "./engine-description.ts";
import type { FuelAtoms } from "./exhaust-lambda.ts";
import table from "./fuels.json" with { type: "json" };

export type FuelComponent = keyof typeof table.components;

export type FuelProperties = {
  readonly stoichiometricAirFuelRatio: number;
  /** kg/mol, mean of the vapour */
  readonly molarMass: number;
  /** kg/m3, liquid at 15 degC */
  readonly density: number;
  /** enters the port as a gas already */
  readonly gaseous: boolean;
};

/** (1); the coefficient is an argument so that a check can move it. */
export function airFuelRatioOfComposition(hydrogen: number, oxygen: number, coefficient = 34.56): number {
  const oxygenDemand = 4 + hydrogen - 2 * oxygen;
  requirePositive("oxygen demand", oxygenDemand);
  return (coefficient * oxygenDemand) / (12.011 + 1.008 * hydrogen + 16 * oxygen);
}

/** (2): a blend by liquid volume, e.g. { petrol: 0.9, ethanol: 0.1 }. The shares are scaled to sum to one. */
export function blendProperties(volumes: { readonly [component in FuelComponent]?: number }): FuelProperties {
  let volume = 0;
  let mass = 0;
  let air = 0;
  let moles = 0;
  let gaseous = true;
  for (const [name, share] of Object.entries(volumes)) {
    if (share === 0) continue;
    requirePositive(`share of ${name}`, share);
    const component = table.components[name as FuelComponent];
    const componentMass = share * component.density;
    volume += share;
    mass += componentMass;
    air += componentMass * airFuelRatioOfComposition(component.hydrogen, component.oxygen);
    moles += (componentMass / component.molarMass) * 1000;
    gaseous &&= component.gaseous;
  }
  requirePositive("sum of the shares", volume);
  return { stoichiometricAirFuelRatio: air / mass, molarMass: mass / moles, density: mass / volume, gaseous };
}

const byName = new Map<FuelName, FuelProperties>(
  Object.entries(table.fuels).map(([name, volumes]) => [name as FuelName, blendProperties(volumes)]),
);

/** Properties of a named fuel, or of one known by its stoichiometric ratio alone (see `fuelOfRatio`). */
export function fuelProperties(fuel: FuelName | { readonly stoichiometricAirFuelRatio: number }): FuelProperties {
  if (typeof fuel !== "string") return fuelOfRatio(fuel.stoichiometricAirFuelRatio);
  const found = byName.get(fuel);
  if (found === undefined) throw new Error(`Assertion failed: no fuel ${fuel}`);
  return found;
}

export function stoichiometricAirFuelRatio(fuel: FuelName | { readonly stoichiometricAirFuelRatio: number }): number {
  return typeof fuel === "string" ? fuelProperties(fuel).stoichiometricAirFuelRatio : fuel.stoichiometricAirFuelRatio;
}

/**
 * Atoms of hydrogen and oxygen per carbon atom of a named fuel, its components weighed by the carbon they bring; null for a fuel
 * known by its ratio alone.
 */
export function fuelAtoms(fuel: FuelName | { readonly stoichiometricAirFuelRatio: number }): FuelAtoms | null {
  if (typeof fuel !== "string") return null;
  let carbon = 0;
  let hydrogen = 0;
  let oxygen = 0;
  for (const [name, volume] of Object.entries(table.fuels[fuel])) {
    const component = table.components[name as FuelComponent];
    const moles = (volume * component.density) / (12.011 + 1.008 * component.hydrogen + 16 * component.oxygen);
    carbon += moles;
    hydrogen += moles * component.hydrogen;
    oxygen += moles * component.oxygen;
  }
  return { hydrogenPerCarbon: hydrogen / carbon, oxygenPerCarbon: oxygen / carbon };
}

/**
 * A fuel of which only the ratio is known: between ethanol and petrol it is taken as their blend, above as petrol, below as
 * methanol, for molar mass and density only.
 */
function fuelOfRatio(ratio: number): FuelProperties {
  requirePositive("stoichiometric air-fuel ratio", ratio);
  const petrol = fuelProperties("petrol");
  const ethanol = fuelProperties("ethanol");
  const base = ratio < ethanol.stoichiometricAirFuelRatio ? fuelProperties("methanol") : petrol;
  if (ratio >= petrol.stoichiometricAirFuelRatio || base !== petrol)
    return { ...base, stoichiometricAirFuelRatio: ratio };
  const massOfEthanol =
    (petrol.stoichiometricAirFuelRatio - ratio) /
    (petrol.stoichiometricAirFuelRatio - ethanol.stoichiometricAirFuelRatio);
  const blend = blendProperties({
    ethanol: massOfEthanol / ethanol.density,
    petrol: (1 - massOfEthanol) / petrol.density,
  });
  return { ...blend, stoichiometricAirFuelRatio: ratio };
}
