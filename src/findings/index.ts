/**
 * findings: which named fault would make the witnesses depart as they do.
 * In: a prepared tally. Out: probabilities of healthy, causes and "not in the catalogue", sizes with intervals, groups that
 * this recording cannot tell apart, sizes ruled out, the workshop checks that would tell most.
 * Refuses: files, screens, to blame a part where a group is all that is known.
 */
export { CATALOGUE, type Cause } from "./catalogue.ts";
export type { CauseEntry, Prediction, Station } from "./cause.ts";
export {
  type AskedNumber,
  CHECKS,
  type CheckEntry,
  checkById,
  type FoundResult,
  foundLikelihood,
  type NumberCheck,
  type RankedCheck,
  rankChecks,
  type Spoken,
  spokenFor,
} from "./checks/index.ts";
export { evidenceOf, shiftFor } from "./evidence-of.ts";
export { type ExcludedSizes, excludedSizes } from "./exclusions.ts";
export { inseparableCauses, type Visibility } from "./inseparable.ts";
export { type DefiniteFault, type Known, NOTHING_KNOWN } from "./known.ts";
export { logSum } from "./log-sum.ts";
export { type Misfit, misfit } from "./misfit.ts";
export { explanationPrediction, ownPrediction } from "./own-prediction.ts";
export { type Sensitivity, sensitivities } from "./sensitivity.ts";
export { type SizeNode, sizeQuantile } from "./size-nodes.ts";
export { reported } from "./size-scale.ts";
export { toldQuantile } from "./told-size.ts";
export { type Stray, strayOf } from "./unexplained.ts";
export { type VisitedPart, visitedParts } from "./visited-parts.ts";
export { type Weighed, type WeighedCause, type WeighedExplanation, weighAll } from "./weigh-all.ts";
