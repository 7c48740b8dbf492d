/** A stretch of steady (or nearly steady) running condensed to one row. */
import type { QuantityId } from "../quantity-id.ts";
import type { EngineState } from "../states/state-span.ts";

/** One channel over one stretch. Everything in SI of the channel. */
export type Reading = {
  /** value at the middle of the stretch (robust straight line through the real readings) */
  readonly mean: number;
  /** variance of `mean`: scatter / effective samples + resolution^2/12 + (slope x time skew)^2 */
  readonly variance: number;
  /** per s */
  readonly slope: number;
  /** standard deviation about the line */
  readonly scatter: number;
  readonly low: number;
  readonly high: number;
  /** real readings (not repeated ones) */
  readonly samples: number;
};

/** "meterFlow", or "shortTrim:2" where the channel belongs to a bank of a two-bank engine */
export type ReadingKey = QuantityId | `${QuantityId}:${1 | 2}`;

export type OperatingPoint = {
  readonly id: number;
  /** index of the recording in the job */
  readonly recording: number;
  /** s since the start of that recording */
  readonly start: number;
  readonly end: number;
  readonly states: readonly EngineState[];
  /** cell of speed and load: points of one region share what no witness model explains */
  readonly region: string;
  readonly readings: ReadonlyMap<ReadingKey, Reading>;
};

/** Engine standing, sensors alive: what each sensor says of the surrounding air. */
export type KeyOnReading = {
  readonly recording: number;
  readonly start: number;
  readonly end: number;
  readonly readings: ReadonlyMap<ReadingKey, Reading>;
};
