/**
 * engine: what the engine does with air and fuel.
 * In: engine description, pressures, temperatures, speed, fuel. Out: air flow by displacement and breathing, stoichiometry,
 * injected fuel, residual gas, loads of SAE J1979.
 * Refuses: to read a sensor or a file; to guess a value that the description leaves open.
 */

export {
  type ChargeHeating,
  type ChargeState,
  chargeHeatingShare,
  chargeTemperature,
  DEFAULT_CHARGE_HEATING,
} from "./charge-temperature.ts";
export type {
  EngineDescription,
  FuelName,
  MeterCurve,
  MeterDescription,
  MeterKind,
  SignalUnit,
} from "./engine-description.ts";
export {
  ABSOLUTE_LOAD_DENSITY,
  absoluteLoad,
  calculatedLoad,
  type LoadState,
  massFlowOfAbsoluteLoad,
  massFlowOfCalculatedLoad,
} from "./engine-load.ts";
export { type ExhaustComposition, idealExhaust } from "./exhaust-composition.ts";
export {
  combustionWaterPerDryGas,
  type ExhaustGas,
  exhaustLambda,
  type FuelAtoms,
  toDryBasis,
  toWetBasis,
  WATER_GAS_CONSTANT,
} from "./exhaust-lambda.ts";
export { atomsOfMassShares } from "./fuel-composition.ts";
export {
  airFuelRatioOfComposition,
  blendProperties,
  type FuelComponent,
  type FuelProperties,
  fuelAtoms,
  fuelProperties,
  stoichiometricAirFuelRatio,
} from "./fuel-properties.ts";
export { airFromFuel, combineTrims, fuelForAir, fuelSideFactor } from "./fuel-side.ts";
export { fuelVapourDisplacement } from "./fuel-vapour-displacement.ts";
export {
  fuelFlowOfPulses,
  injectedFuel,
  injectorDuty,
  injectorFlow,
  injectorPressureDifference,
  type Pulse,
  pulseWidthFor,
} from "./injector.ts";
export { type DeadTimeCurve, deadTimeAt, deadTimeCurve } from "./injector-dead-time.ts";
export {
  manifoldPressureRate,
  manifoldTimeConstant,
  type StoredGas,
  storageFlow,
} from "./manifold-storage.ts";
export {
  type PowerAir,
  powerCorrectionDin70020,
  powerCorrectionIso1585Compression,
  powerCorrectionIso1585Spark,
  powerCorrectionJ1349,
} from "./power-correction.ts";
export { GAMMA_CHARGE, type ResidualGasState, residualGasFactor, residualGasFraction } from "./residual-gas.ts";
export { type Breathing, displacementFlow, speedDensityFlow, volumetricEfficiencyOf } from "./speed-density.ts";
