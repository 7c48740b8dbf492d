/** What turns the numbers of a column into SI, and what is known when it is chosen. */
import type { SiScale } from "./si-scale.ts";
import type { UnitMeaning } from "./unit-meaning.ts";

export type Conversion = {
  /** as a channel list may write it */
  readonly unitUsed: string;
  readonly scale: SiScale;
  /** 0 to 1: how well the unit and the values fit the quantity */
  readonly fit: number;
  readonly reasons: readonly string[];
};

export type Surroundings = {
  /** Pa, for gauge pressures; null where neither recording nor engine file says */
  readonly barometer: number | null;
  /** kg of air for one kg of fuel, for mixtures given as air-fuel ratio */
  readonly stoichiometric: number;
  /** symbols of units that other columns of the recording are in: an unlabelled one is likelier in them */
  readonly habits: readonly string[];
};

/** What is known beside the numbers. */
export type Said = {
  readonly unit: UnitMeaning | null;
  /** the name as written */
  readonly words: string;
  /** the name says that it counts down from the barometer */
  readonly vacuum: boolean;
  /** the user says the unit: not to be doubted */
  readonly pinned: boolean;
};
