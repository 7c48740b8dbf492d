/**
 * job: the whole path as pure functions, one for each command; the only door for the edges.
 * In: bytes, texts, version, seed. Out: results of the published formats, or a failure with its reason and remedy.
 * Refuses: files, network, clock; to keep or change what it is given.
 */

export { assumptionsTemplate } from "./assumptions/assumptions-template.ts";
export { type Checked, type CheckInput, check } from "./check.ts";
export { type Described, type DescribeInput, type Description, describe } from "./describe.ts";
export { engineTemplate } from "./engine-file/engine-template.ts";
export { parseEngineFile } from "./engine-file/parse-engine-file.ts";
export type { AirOptions } from "./meter/air-at-meter.ts";
export { type MeterAmbientInput, meterAmbient } from "./meter/ambient.ts";
export type { AmbientOptions } from "./meter/ambient-options.ts";
export { type MeterBench, type MeterBenchInput, meterBench } from "./meter/bench.ts";
export { type MeterConvertInput, meterConvert } from "./meter/convert.ts";
export type { UncertaintyOptions } from "./meter/convert-uncertainty.ts";
export { type MeterCurveInput, meterCurve } from "./meter/curve.ts";
export { FIT_LAWS, type FitLawId, type MeterFit, type MeterFitInput, meterFit } from "./meter/fit.ts";
export { type QuantityChoice, quantityChoices } from "./quantity-choices.ts";
export type { ReferenceInput } from "./reference/read-references.ts";
export { simulateChoices } from "./simulate/choices.ts";
export { type DemoJob, demo } from "./simulate/demo.ts";
export { type Simulated, simulate } from "./simulate/simulate.ts";
export { SIMULATE_DEFAULTS, type SimulateOptions } from "./simulate/simulate-options.ts";
export type { SimulateChoices, SimulatedSheet } from "./simulate/simulate-schema.ts";
export { recordingCard } from "./standard-recording/recording-card.ts";
export { type RecordingInput, wholeRecording } from "./understand.ts";
export { parseVisitFile, severalVisits, type VisitEntry } from "./visit/parse-visit-file.ts";
