/**
 * meters: every kind of air meter, from raw signal to mass of air and back, and what each is blind to.
 * In: a meter's description and signal, the air at the meter. Out: mass flow of moist air with a quality code, and the inverse.
 * Refuses: to read files or channels; to extrapolate a curve silently; one kind knows nothing of another.
 */

export {
  type BenchResult,
  type BenchRow,
  type BenchSheet,
  type BenchUncertainties,
  flowBenchSheet,
} from "./bench/flow-bench-sheet.ts";
export {
  type ReferenceDevice,
  type ReferenceFlow,
  type ReferenceReading,
  referenceFlow,
} from "./bench/reference-device.ts";
export { type CurveTable, curveFromCsv, curveToCsv } from "./curves/curve-csv.ts";
export { type CurveForm, FORM_KINDS, type FormKind } from "./curves/curve-form.ts";
export { curveFromJson, curveToJson } from "./curves/curve-json.ts";
export type { BenchPoint } from "./curves/fit-candidates.ts";
export { type CurveFit, type FitOptions, type FittedForm, type FittedParameter, fitCurve } from "./curves/fit-curve.ts";
export { type CurveFunctions, type CurveReading, curveFunctions, type FlowCurve } from "./curves/meter-curve.ts";
export { type TabulatedCurve, tabulateCurve } from "./curves/tabulate-curve.ts";
export { COMPENSATIONS, type Compensation, compensationRatio } from "./density-compensation.ts";
export {
  type ConvertedSignal,
  type CurveRow,
  convertSignals,
  describeCurve,
  meterSlope,
  signalRange,
} from "./describe-curve.ts";
export {
  altitudeCases,
  type EnvironmentCase,
  type EnvironmentRow,
  environmentTable,
  heatCases,
  type MeterEnvironment,
  tiltCases,
} from "./environment-table.ts";
export { exhaustSideAir, exhaustSideGas } from "./exhaust/exhaust-side-air.ts";
export { type FuelSideReading, fuelSideAir, fuelSidePulseWidth } from "./fuel-side/fuel-side-air.ts";
export { collisNusselt, kingNusselt, kramersNusselt, type Nusselt, temperatureLoading } from "./heat-loss.ts";
export { filmTemperatureRatio } from "./hot-film/film-air-temperature.ts";
export { type FilmLaw, filmMassFlow, filmSignal } from "./hot-film/film-law.ts";
export { type FilmOutput, filmOutput, filmSignalOfOutput } from "./hot-film/film-output.ts";
export { filmPulsationRatio } from "./hot-film/film-pulsation.ts";
export { compensatedWireRatio } from "./hot-wire/ambient-compensation.ts";
export {
  type ConstantTemperatureDrive,
  constantCurrentFlow,
  constantCurrentVoltage,
  constantTemperatureFlow,
  constantTemperatureVoltage,
  constantVoltageCurrent,
  constantVoltageFlow,
  type KingLaw,
  massFlowOfConductance,
  type WireElement,
  wireConductance,
} from "./hot-wire/king-law.ts";
export {
  averagedBeforeLinearising,
  averagedSignalRatio,
  meanPower,
  rectifiedMean,
  rectifiedMeanOf,
} from "./hot-wire/pulsation-means.ts";
export { geometricConductance, type WireGeometry, wireTemperatureRatio } from "./hot-wire/wire-air-temperature.ts";
export { cleanedFlow, type Fouling, fouledConductance, fouledReadingRatio } from "./hot-wire/wire-fouling.ts";
export { hoseTimeConstant } from "./manifold-pressure/pressure-hose.ts";
export { intakePulseFrequency, sampledMeanError } from "./manifold-pressure/pressure-sampling.ts";
export {
  type PressureSensor,
  type PressureSensorReason,
  preparePressureSensor,
  pressureOfVoltage,
  type SensorSupply,
  voltageOfPressure,
} from "./manifold-pressure/pressure-sensor.ts";
export { type PressureSideState, pressureSideAir, pressureSideVoltage } from "./manifold-pressure/pressure-side-air.ts";
export { type MeterFacts, meterFacts, type OtherWitness } from "./meter-facts.ts";
export { type AirSamples, densityFactor, type MeterReading, meterFlow, meterFlows } from "./meter-flow.ts";
export { type MeterSignal, meterSignal } from "./meter-signal.ts";
export { type MeterUncertainties, meterUncertainty } from "./meter-uncertainty.ts";
export { otherTubeFactor } from "./other-tube.ts";
export { PLATINUM_TEMPERATURES, platinumResistanceRatio, platinumTemperature } from "./platinum.ts";
export {
  ASSUMED_CALIBRATION_AIR,
  type MeterReason,
  type PreparedMeter,
  prepareMeter,
} from "./prepare-meter.ts";
export { type Readings, readingBudget, relativeSensitivities } from "./reading-budget.ts";
export { type DensityExponent, sensedDensityExponent } from "./sensed-density.ts";
export { supplyErrorRatio } from "./supply-error.ts";
export { shownSignal, tellPoint, tellSignal } from "./tell-signal.ts";
export { type ThrottlePlate, throttleAngle, throttleArea } from "./throttle/throttle-area.ts";
export {
  effectiveAreaOf,
  THROTTLE_USABLE_RATIO,
  type Throttle,
  type ThrottleState,
  throttleAngleOf,
  throttleMassFlow,
} from "./throttle/throttle-flow.ts";
export {
  type MovingVane,
  stepVane,
  type VaneForcing,
  type VaneState,
  vaneNaturalFrequency,
} from "./vane/vane-dynamics.ts";
export { type Vane, vaneAngle, vaneMassFlow, vaneSensedFlow, vaneTorque } from "./vane/vane-law.ts";
export { vanePulsationRatio } from "./vane/vane-pulsation.ts";
export { DEFAULT_PRELOAD_SHARE, vaneTorqueErrorRatio } from "./vane/vane-tilt.ts";
export { type WiperTrack, wiperAngle, wiperRatio, wiperRatioOfVoltage } from "./vane/vane-wiper.ts";
export { countingResolution, gateForResolution, timingResolution } from "./vortex/count-resolution.ts";
export { cylinderStrouhal, freeAreaShare, type Strouhal, vortexPulsesPerVolume } from "./vortex/strouhal.ts";
export { lockedFrequency, missedPulsesRatio } from "./vortex/vortex-faults.ts";
export {
  frequencyOfPeriod,
  lowestUsableVolumeFlow,
  type VortexMeter,
  vortexFrequency,
  vortexMassFlow,
} from "./vortex/vortex-law.ts";
