/**
 * tally: the witnesses of the same air held against each other.
 * In: operating points, an engine description, assumptions. Out: a model of the witnesses, and the likelihood of any shift
 * of them handed in as data, with the air of every point.
 * Refuses: to know causes, to judge, to call a witness right.
 */
export {
  ASSUMPTION_TABLE,
  type Assumption,
  type AssumptionKey,
  type Assumptions,
  defaultAssumptions,
  withAssumptions,
} from "./assumptions.ts";
export { buildTallyModel } from "./build-model.ts";
export {
  applyPrecision,
  type EvidenceParts,
  evidenceParts,
  logEvidence,
  type Prepared,
  prepare,
  type Shift,
} from "./likelihood.ts";
export { type PlateOpening, plateOpening } from "./plate-opening.ts";
export { meanSquares, type Posterior, posterior } from "./posterior.ts";
export { find as findReading } from "./readings.ts";
export { commandedShut, mayRecirculate, narrowRecirculation } from "./recirculation.ts";
// What a healthy job passes on to the next engine of its kind.
export {
  type HealthyReference,
  healthyReference,
  type ReferenceValue,
  restricted,
} from "./reference/healthy-reference.ts";
export { type FunctionState, REFERENCE_QUANTITIES, type ReferenceQuantity } from "./reference/reference-quantities.ts";
export { type KindSpread, SPREADS } from "./reference/spreads.ts";
export { isSound, type Spreads, withReferences } from "./reference/with-references.ts";
export { type ShiftGeometry, shiftGeometry } from "./shift-geometry.ts";
export { smoothFunction } from "./smooth-function.ts";
export type { PointPhysics, StandingKind, StandingObservation, TallyModel, TallyWitness } from "./tally-model.ts";
