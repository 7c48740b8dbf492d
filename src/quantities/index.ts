/**
 * quantities: units, constants, channels and results.
 * In: text and numbers as people write them. Out: SI numbers, typed channels, results that carry their reason.
 * Refuses: to guess a unit, to carry unit objects through calculations.
 */
export { assert } from "./assert.ts";
export { chanceWords } from "./chance-words.ts";
export { type Channel, QUALITY, type Quality, type SiUnit } from "./channel.ts";
export * from "./constants.ts";
export { formatQuantity, parseQuantity, type QuantityReason } from "./quantity-text.ts";
export { describeFailure, type Failure, failure, type Result, type Success, success, type Where } from "./result.ts";
export { type Dimension, findUnit, fromSi, toSi, type Unit, unit, unitsOf } from "./units.ts";
export type { Warning } from "./warning.ts";
