/** A passage of the recording in which the engine was in one state. Spans of different states may overlap (warm and idle). */
export type EngineState =
  | "key-on" // engine off, sensors alive
  | "cranking"
  | "running"
  | "cold"
  | "warm-up"
  | "warm"
  | "idle"
  | "fuel-cut"
  | "closed-loop"
  | "open-loop"
  | "enrichment"
  | "full-load";

export type StateSpan = {
  readonly state: EngineState;
  /** s */
  readonly start: number;
  readonly end: number;
  /** which channels say so, in words */
  readonly reason: string;
};
