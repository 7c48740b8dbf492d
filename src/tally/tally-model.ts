/**
 * The witnesses of every operating point laid out for the algebra: K points by W witnesses, unknowns in a basis.
 *
 *   y_kw = a_kw u_k + b_(region,w) + sum_j Phi_kwj beta_j + shift_kw + e_kw,   beta ~ N(0, 1), b ~ N(0, D), e_k ~ N(0, R_k)
 *
 * u_k (ln of the dry fresh air into the cylinders) has no prior: it is eliminated. `shift` is what a cause would do; the
 * tally knows no causes, it judges shifts handed in as data (likelihood.ts).
 */

import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import type { Assumptions } from "./assumptions.ts";

/** kg water/kg dry air taken where nobody measured it: temperate weather, common practice, no source */
export const HUMIDITY_RATIO = 0.008;

export type TallyWitness =
  | "meter"
  | "meter-2"
  | "pressure"
  | "throttle"
  | "fuel"
  | "fuel-bank1"
  | "fuel-bank2"
  | "exhaust";

/** The throttle as an orifice, one entry a point (throttle-state.ts). */
export type ThrottleState = {
  /** Pa before the throttle */
  readonly upstream: Float64Array;
  /** m2 effective, as the opening suggests, bypass included; NaN where the throttle is no witness */
  readonly area: Float64Array;
  /** d ln(area)/d(reading) */
  readonly openingEffect: Float64Array;
  /** share of the area that is bypass */
  readonly bypass: Float64Array;
  /** d ln(flow)/d ln(manifold pressure), 0 or less */
  readonly pressureEffect: Float64Array;
  /** the bypass may change from moment to moment: a mechanical throttle with an idle valve that nobody recorded */
  readonly bypassVaries: boolean;
};

/** What the physics of a cause needs to know at each point; SI; one entry a point. NaN: not known and not needed. */
export type PointPhysics = {
  /** rev/s */
  readonly speed: Float64Array;
  /** manifold pressure: read, or inferred from the air where not recorded */
  readonly pressure: Float64Array;
  readonly barometer: Float64Array;
  readonly intakeTemperature: Float64Array;
  readonly outsideTemperature: Float64Array;
  /** rough air into the cylinders before any inference, kg/s */
  readonly air: Float64Array;
  /** meter as read (whole engine), kg/s; NaN where absent; one array a meter */
  readonly meter: { readonly [id in "meter" | "meter-2"]?: Float64Array };
  /** air that the pressure suggests with expected breathing, kg/s, recirculated gas included; NaN where not recorded */
  readonly pressureAir: Float64Array;
  /** raw meter signal, V; NaN where absent */
  readonly meterVoltage: Float64Array | null;
  /** s, opening time less assumed dead time */
  readonly effectivePulse: Float64Array;
  readonly exhaustPressure: Float64Array;
  /** idle and largest flow of this job, kg/s */
  readonly idleFlow: number;
  readonly largestFlow: number;
  readonly stoichiometric: number;
  /** the throttle as an orifice; null where it is no witness */
  readonly throttle: ThrottleState | null;
};

/** the state of the points before the witnesses are read */
export type PointState = Omit<PointPhysics, "pressureAir" | "throttle">;

export type TallyModel = {
  readonly engine: EngineDescription;
  readonly assumptions: Assumptions;
  readonly points: readonly OperatingPoint[];
  readonly witnesses: readonly TallyWitness[];
  /** K*W; 0 where absent */
  readonly y: Float64Array;
  /** K*W; 1 where present */
  readonly present: Uint8Array;
  /** K*W*W error covariance of the primitive readings, zero rows where absent */
  readonly errors: Float64Array;
  /** W: variance shared by the points of one region */
  readonly discrepancy: Float64Array;
  /** W*W: the same with what witnesses share of it; L of L L' */
  readonly discrepancyFactor: Float64Array;
  /** K: index of the region */
  readonly region: Int32Array;
  readonly regions: number;
  /** K*W*B */
  readonly basis: Float64Array;
  readonly columns: number;
  /** per witness: the columns that move it at all; the rest of its rows is zero */
  readonly moving: readonly Int32Array[];
  /** which columns belong to which unknown */
  readonly unknowns: readonly { readonly name: string; readonly from: number; readonly columns: number }[];
  /** rows of B numbers: linear forms of beta that can't be negative (recirculation at the nodes of its map) */
  readonly nonNegative: readonly Float64Array[];
  /** trims, probes and sensors at their limit: the witness there is only a bound; y and present hold it as absent */
  readonly bounds: readonly Bound[];
  /** observations without air in them: the pressure sensor against the barometer with the engine standing */
  readonly standing: readonly StandingObservation[];
  readonly physics: PointPhysics;
};

/** sign +1: the witness's true value is at least `value`; -1: at most. Variance of the reading itself. */
export type Bound = {
  readonly point: number;
  readonly witness: number;
  readonly value: number;
  readonly sign: 1 | -1;
  readonly variance: number;
};

/**
 * An observation with no air in it. `reading` is what was read less what a sound engine is expected to show, so that
 * reading = shift + basis' beta + error, in `unit`; `where` says from which recording and seconds.
 *
 *   pressure-against-barometer        kPa: manifold sensor less barometer, engine standing (key on, or run down with the key on)
 *   meter-at-zero-flow                engine standing: V or 1 (wiper ratio), signal less that of the curve at zero flow; g/s: the
 *                                     flow reported, where only that is recorded. `meter` says which
 *   intake-temperature-at-cold-soak   K: intake temperature less that of coolant and outside air before the first start
 *   full-load-pressure-drop           kPa: barometer less manifold pressure at full load beyond a sound filter's, at the largest flow
 *   healthy-reference                 1: what a healthy engine of the same kind says of this one's unknowns; no cause shifts it
 */
export type StandingKind =
  | "pressure-against-barometer"
  | "meter-at-zero-flow"
  | "intake-temperature-at-cold-soak"
  | "full-load-pressure-drop"
  | "healthy-reference";

export type StandingObservation = {
  readonly kind: StandingKind;
  readonly unit: "kPa" | "V" | "1" | "g/s" | "K";
  /** the meter it is about; null for the others */
  readonly meter: "meter" | "meter-2" | null;
  readonly reading: number;
  readonly variance: number;
  readonly basis: Float64Array;
  readonly where: string;
  /** the barometer it was held against is the manifold sensor's own reading with the engine standing */
  readonly ownBarometer?: true;
};
