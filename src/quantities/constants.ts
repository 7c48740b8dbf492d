/**
 * Constants by standing. A correlation that was fitted with its own constants keeps them in its own file.
 *
 * Changes: 2026-11 first list (CODATA 2022; SI of 2019).
 */

// Exact (SI 2019 defining constants; [codata2022])
export const BOLTZMANN = 1.380649e-23; // J/K
export const AVOGADRO = 6.02214076e23; // 1/mol
export const STANDARD_GRAVITY = 9.80665; // m/s2, conventional
export const STANDARD_ATMOSPHERE = 101_325; // Pa, conventional
export const ZERO_CELSIUS = 273.15; // K

// Derived by formula
export const MOLAR_GAS_CONSTANT = BOLTZMANN * AVOGADRO; // J/(mol K)

// Measured or of agreed composition
/** kg/mol, dry air of 400 umol/mol CO2 [picard2008] eq. (4) */
export const MOLAR_MASS_DRY_AIR = 28.96546e-3;
/** kg/mol, water [picard2008] */
export const MOLAR_MASS_WATER = 18.01528e-3;

/** J/(kg K), specific gas constant of dry air, by formula (287.05) */
export const GAS_CONSTANT_DRY_AIR = MOLAR_GAS_CONSTANT / MOLAR_MASS_DRY_AIR;
/** J/(kg K), specific gas constant of water vapour, by formula (461.52) */
export const GAS_CONSTANT_WATER = MOLAR_GAS_CONSTANT / MOLAR_MASS_WATER;
/** 1, ratio of the molar masses air/water: a humidity ratio w displaces 1.608 w of dry air */
export const AIR_WATER_MOLAR_RATIO = MOLAR_MASS_DRY_AIR / MOLAR_MASS_WATER;
/** 1, ratio of specific heats of dry air near 300 K [heywood1988] App. D */
export const GAMMA_AIR = 1.4;
