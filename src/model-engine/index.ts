/**
 * model-engine: an invented engine on which every witness hears the same breath.
 * In: an engine (drawing and parts), ambient, what is done with it, planted faults, a recorder, a seed.
 * Out: a recording as text, the engine file its owner would write, and the truth beside it. The same seed gives the same bytes.
 * Refuses: to describe a real engine; to tell the inference anything but through the recording.
 */
export type { Blemishes } from "./blemishes.ts";
export { drawnByCrank } from "./crank-air.ts";
export { crankBreathing } from "./crank-breathing.ts";
export { type CrankCycle, crankResistances, crankSettings, runCrankCycle } from "./crank-cycle.ts";
export { type CrankEngine, type CrankSettings, heatPerAir, newCrankEngine } from "./crank-engine.ts";
export type { EngineDesign, MeterDesign } from "./engine-design.ts";
export { type EngineFileObject, engineFileOf } from "./engine-file.ts";
export { drawParts, type EngineParts, HEALTHY_TOLERANCES } from "./engine-parts.ts";
export {
  BOOSTED_BOTH,
  boostedBoth,
  buildEngine,
  DIESEL_WITH_EGR,
  dieselWithEgr,
  PETROL_WITH_METER,
  PETROL_WITH_PRESSURE,
  petrolWithMeter,
  petrolWithPressure,
} from "./families.ts";
export { type Fault, PLANTABLE, type PlantableCause, USUAL_LOSS } from "./fault.ts";
export { type Ambient, ambientAt, type ModelEngine } from "./model-engine.ts";
export { PETROL_WITH_VANE, PETROL_WITH_VORTEX } from "./older-families.ts";
export { FAULT_LIMITS, type FaultReason, parseFault } from "./parse-fault.ts";
export { type PreparedEngine, prepareEngine } from "./prepared-engine.ts";
export { type Protocol, protocolDuration, roadDriving, rpm, type Segment, standardRecording } from "./protocol.ts";
export type { Recorder } from "./recorder.ts";
export { RECORDER_CHANNELS, type RecorderChannelId } from "./recorder-channel-table.ts";
export { runEngine } from "./run-engine.ts";
export { FAMILY_DESIGNS, simulateFamily } from "./simulate-family.ts";
export { type SimulatedRecording, type Simulation, simulateRecording } from "./simulate-recording.ts";
export {
  FAMILIES,
  type Family,
  loggerChannels,
  standardTester,
  TESTER_CHANNELS,
  testerChannels,
  workshopLogger,
} from "./standard-recorders.ts";
export { PLAIN_STYLE, type TableStyle } from "./table-text.ts";
export { TRACE_COLUMNS, type Trace, type TraceColumn } from "./trace.ts";
export { type BreathingPoint, trueBreathing, trueMeterCurve } from "./true-curves.ts";
export { truthText } from "./truth-table.ts";
