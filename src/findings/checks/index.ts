/** Workshop checks: their table, what their results say, which comes next. */
export type { AskedNumber, CheckEntry, NumberCheck, WordsCheck } from "./check-entry.ts";
export { CHECKS, checkById } from "./check-table.ts";
export { foundLikelihood } from "./found-likelihood.ts";
export type { FoundResult } from "./found-result.ts";
export { type RankedCheck, rankChecks } from "./rank-checks.ts";
export { type Spoken, spokenFor } from "./settling-check.ts";
