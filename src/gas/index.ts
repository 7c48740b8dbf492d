/**
 * gas: air and its flow through holes.
 * In: pressures, temperatures, humidity in SI. Out: densities, humidity in other words, transport properties, mass flows.
 * Refuses: engines, meters and data; a value outside the stated range of a formula.
 */

export { effectiveNeckLength, helmholtzFrequency, quarterWaveFrequency } from "./acoustics.ts";
export { airConductivity, airViscosity } from "./air-transport.ts";
export { approximateMoistAirDensity } from "./approximate-density.ts";
export { CIPM_2007, type CipmConstants, type CipmDensity, type CipmInput, cipmDensity } from "./cipm-density.ts";
export {
  type CriticalFlow,
  type CriticalNozzle,
  type CriticalNozzleFlow,
  criticalFlowFactor,
  criticalNozzleFlow,
} from "./critical-nozzle.ts";
export {
  type DeviceFlow,
  type DeviceReading,
  type DifferentialPressureDevice,
  differentialPressureFlow,
} from "./differential-pressure-device.ts";
export { type DisplacementPump, pumpMolarFlow, pumpVolumePerRevolution } from "./displacement-pump.ts";
export { dryAirDensity } from "./dry-air-density.ts";
export { nozzleExpansibility } from "./flow-nozzle.ts";
export {
  dewPointFromHumidityRatio,
  dryAirShare,
  enhancementFactor,
  HUMIDITY_TEMPERATURES,
  humidityRatioFromDewPoint,
  humidityRatioFromRelativeHumidity,
  humidityRatioFromVapourPressure,
  type RelativeHumidityState,
  relativeHumidityFromHumidityRatio,
  vapourPressureFromHumidityRatio,
  waterMoleFraction,
} from "./humidity.ts";
export {
  type IsentropicRatios,
  isentropicAreaRatio,
  isentropicRatios,
  machNumberOfPressureRatio,
  speedOfSound,
} from "./isentropic.ts";
export {
  idealMoistAirDensity,
  MOIST_AIR_RANGE,
  type MoistAir,
  moistAirCompressibility,
  moistAirDensity,
} from "./moist-air-density.ts";
export {
  chokedFlowFunction,
  criticalPressureRatio,
  orificeFlowFunction,
  orificeFlowFunctionSlope,
} from "./orifice-flow-function.ts";
export { type OrificeInput, orificeMassFlow } from "./orifice-mass-flow.ts";
export {
  ORIFICE_TAPS,
  type OrificeTaps,
  orificeDischargeCoefficient,
  orificeExpansibility,
  orificePermanentLoss,
} from "./orifice-plate.ts";
export { incompressibleOrificeFlow, restrictionMassFlow, restrictionPressureDrop } from "./restriction.ts";
export { saturationPressure, saturationTemperature } from "./saturation-pressure.ts";
export { type SmoothedFlowFunction, smoothedOrificeFlowFunction } from "./smoothed-orifice-flow.ts";
export {
  type AtmosphereState,
  geopotentialAltitude,
  pressureAltitude,
  STANDARD_ATMOSPHERE_ALTITUDES,
  standardAtmosphere,
} from "./standard-atmosphere.ts";
export {
  calibratedVenturiFlow,
  type VenturiInlet,
  type VenturiShape,
  venturiCriticalRatio,
  venturiFlowCoefficient,
  venturiMassFlow,
  venturiMolarFlow,
} from "./venturi.ts";
export { dryAirVirial, moistAirVirial } from "./virial-coefficients.ts";
