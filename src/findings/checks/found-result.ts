/** What a workshop check showed, as the found file (job/found-file) hands it in. */

export type FoundResult = {
  readonly check: string;
  /** of two banks, the one it was made on; null: the engine as a whole */
  readonly bank: 1 | 2 | null;
  /** the named outcome of a check told in words; null where numbers were read */
  readonly outcome: string | null;
  /** SI, by key of what is asked; empty where an outcome is named */
  readonly numbers: { readonly [key: string]: number };
};
