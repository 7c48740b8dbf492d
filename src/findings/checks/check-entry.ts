/** A workshop check as its table (checks.json) says it. */

/** What the engine, or the recording, must have or lack for a check to be worth proposing (applicable-checks.ts). */
export type Need =
  | "meter"
  | "element"
  | "doses-by-meter"
  | "pressure-sensor"
  | "throttle"
  | "boosted"
  | "spark"
  | "fuel-control"
  | "lambda-probe"
  | "regulator-at-manifold"
  | "liquid-spark-fuel"
  | "egr"
  | "key-on-not-recorded"
  | "full-load-not-recorded"
  | "parts-not-recorded";

type Common = {
  readonly id: string;
  readonly title: string;
  readonly how: string;
  readonly minutes: number;
  /** tools and parts */
  readonly needs: string;
  readonly applies: readonly Need[];
  /** keys of the cautions shown with it */
  readonly cautions: readonly string[];
};

export type ShareRow = {
  readonly causes: readonly string[];
  /** of the outcomes, in their order, for a fault well above `half` */
  readonly shares: readonly number[];
  /** size, in the unit of the cause, at which the row holds half; left out: it holds at any size */
  readonly half?: number;
  readonly standing: string;
};

export type WordsCheck = Common & {
  readonly kind: "words";
  /** the first shows nothing */
  readonly outcomes: readonly { readonly id: string; readonly words: string }[];
  readonly default: { readonly shares: readonly number[]; readonly standing: string };
  readonly rows: readonly ShareRow[];
};

export type AskedNumber = {
  readonly key: string;
  readonly words: string;
  readonly dimension: "pressure" | "temperature" | "ratio" | "number";
  readonly example: string;
};

/** A difference of two readings (of what is usual, where `against` is null). */
export type ReadValue = {
  readonly name: string;
  readonly of: string;
  readonly against: string | null;
  /** what it is usually read against, in `unit` */
  readonly usual: number;
  readonly unit: string;
  /** of a healthy engine's difference, in `unit` */
  readonly sd: number;
};

/** size: the size itself, SI; the others see shiftOf (number-law.ts). */
export type ShiftRule = {
  readonly per: "none" | "size" | "size-times-against" | "ratio-squared" | "less-inverse" | "per-unit-size" | "fixed";
  readonly factor: number;
};

export type ShiftPart = {
  /** odds of this way in which the cause may show; they sum to one */
  readonly weight: number;
  /** one a value */
  readonly shifts: readonly ShiftRule[];
  /** spread of its own, in the unit of the values */
  readonly sd?: number;
};

export type NumberCheck = Common & {
  readonly kind: "number";
  readonly asks: readonly AskedNumber[];
  readonly values: readonly ReadValue[];
  readonly default: { readonly standing: string };
  readonly rows: readonly {
    readonly causes: readonly string[];
    readonly parts: readonly ShiftPart[];
    readonly standing: string;
  }[];
};

export type CheckEntry = WordsCheck | NumberCheck;
