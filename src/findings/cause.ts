/** A cause: what the catalogue says of it, and the law by which its size shifts the witnesses. */
import type { TallyModel } from "../tally/index.ts";

export type Station =
  | "filter"
  | "meter"
  | "duct"
  | "compressor"
  | "throttle"
  | "manifold"
  | "cylinders"
  | "fuel"
  | "exhaust";

export type CauseEntry = {
  readonly id: string;
  readonly station: Station;
  readonly title: string;
  readonly part: string;
  readonly weight: number;
  readonly kind: "amount" | "ratio";
  readonly sizeName: string;
  readonly unit: string;
  readonly sides: readonly [negative: number, positive: number];
  readonly worthMending: number;
  readonly largest: number;
  readonly reason: string;
  /** set where one bank of two may have the fault alone (see the note of causes.json) */
  readonly perBank?: { readonly size: "ratio" | "amount"; readonly common: number };
  /** what it means, and what it does not mean, for the customer */
  readonly means: string;
  readonly meansNot: string;
};

/**
 * What a size of a cause would do. `effect` (K*W) is ln(witness / what it would read if healthy) at the same air. Where the
 * fault makes the witness follow the air other than one to one, `response` (K*W) is d ln(witness)/d ln(air), and `logAir`
 * (K) the air about which that holds. `standing` is the shift of each standing observation, in its unit.
 */
export type Prediction = {
  readonly effect: Float64Array;
  readonly response: Float64Array | null;
  readonly logAir: Float64Array | null;
  readonly standing: readonly number[];
  /** share of the healthy recirculation that remains where it may flow; its spread narrows with it */
  readonly recirculation?: number;
};

/** A second size that a result tells of a cause, in the unit told. */
export type OtherSize = {
  readonly name: string;
  readonly unit: string;
  readonly value: number;
  /** told before the size itself */
  readonly first?: true;
  /** takes the values of the law's forms only, with nothing between them */
  readonly steps?: true;
};

/** `shape` selects among the forms the fault may take (an exponent, a free end); each has its weight. */
export type Shape = { readonly value: number; readonly weight: number };

export type Law = {
  readonly id: string;
  /** false: this engine cannot have this fault (no such part) */
  readonly applies: (model: TallyModel) => boolean;
  readonly shapes: (model: TallyModel) => readonly Shape[];
  /**
   * the most that this side can be on this job (amount in SI, positive): a reading that would turn negative, fuel that would be
   * all unmetered. Where not given, the catalogue's largest
   */
  readonly most?: (model: TallyModel, sign: 1 | -1) => number;
  /** size in SI (a ratio as the factor itself) */
  readonly predict: (model: TallyModel, size: number, shape: number) => Prediction;
  /** what else a result tells of the fault at this size and form */
  readonly otherSizes?: (model: TallyModel, size: number, shape: number) => readonly OtherSize[];
};

export const ONE_SHAPE: readonly Shape[] = [{ value: 0, weight: 1 }];
