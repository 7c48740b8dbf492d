/**
 * job: the whole path as pure functions, one for each command; the only door for the edges.
 * In: bytes, texts, version, seed. Out: results of the published formats, or a failure with its reason and remedy.
 * Refuses: files, network, clock; to keep or change what it is given.
 */

export { type DemoJob, demoJob as demo } from "../model-engine/index.ts";
export { type CheckInput, check } from "./check.ts";
export { type Described, type DescribeInput, type Description, describe } from "./describe.ts";
export { engineTemplate } from "./engine-file/engine-template.ts";
export { parseEngineFile } from "./engine-file/parse-engine-file.ts";
export { type QuantityChoice, quantityChoices } from "./quantity-choices.ts";
export { type RecordingInput, wholeRecording } from "./understand.ts";
