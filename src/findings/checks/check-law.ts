/** The likelihoods of one check: the same two questions whether it is told in words or read as numbers. */
import type { DefiniteFault } from "../known.ts";
import type { Alternative } from "./alternatives.ts";
import type { FoundResult } from "./found-result.ts";

export type Faults = readonly DefiniteFault[] | "unexplained";

export type CheckLaw = {
  /** a fault of this cause may show in the check */
  readonly touches: (cause: string) => boolean;
  /** P(result | faults), up to one constant of the result */
  readonly likelihood: (found: FoundResult, faults: Faults) => number;
  /** P(each of a few outcomes that cover all | faults, over their sizes): what the check may show before it is made */
  readonly foresee: (faults: Alternative["faults"]) => Float64Array;
};
