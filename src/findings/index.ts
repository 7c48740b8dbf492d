/**
 * findings: which named fault would make the witnesses depart as they do.
 * In: a prepared tally. Out: probabilities of healthy, causes and "not in the catalogue", sizes with intervals, groups that
 * this recording cannot tell apart, sizes ruled out.
 * Refuses: files, screens, to blame a part where a group is all that is known.
 */
export { CATALOGUE, type Cause } from "./catalogue.ts";
export type { CauseEntry, Prediction, Station } from "./cause.ts";
export { type ExcludedSizes, excludedSizes } from "./exclusions.ts";
export { inseparableCauses, ownPrediction, type Visibility } from "./inseparable.ts";
export { type Sensitivity, sensitivities } from "./sensitivity.ts";
export { reported } from "./size-scale.ts";
export { type Weighed, type WeighedCause, weighAll } from "./weigh-all.ts";
export { evidenceOf, logSum, type SizeNode, shiftFor, sizeQuantile } from "./weigh-cause.ts";
