/**
 * The answer, as written by `--json` (format "airtally-result/1"). The keys are fixed; the schema is published in
 * docs/schema/result.schema.json. Units stand in the names. The file holds types only, so that every edge may read it.
 */
import type { CheckView, MadeView } from "./check-view.ts";
import type { ChannelView, TimelineView } from "./recording-view.ts";

export type { ChannelView, TimelineView } from "./recording-view.ts";

export type Answer = "proven" | "likely" | "open" | "healthy";
export type WitnessId =
  | "meter"
  | "meter-2"
  | "pressure"
  | "throttle"
  | "fuel"
  | "fuel-bank1"
  | "fuel-bank2"
  | "exhaust";

export type Size = {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly low90: number;
  readonly high90: number;
};

/** `departure` is ln(witness / common answer) over the points named, `sd` its standard deviation. */
export type Evidence = {
  readonly text: string;
  readonly points: readonly number[];
  readonly witness: WitnessId | null;
  readonly departure: number | null;
  readonly sd: number | null;
};

export type Finding = {
  readonly cause: string;
  readonly bank: 1 | 2 | null;
  readonly probability: number;
  readonly priorProbability: number;
  /** of this cause alone, against healthy; null when infinite */
  readonly bayesFactor: number | null;
  readonly sizes: readonly Size[];
  readonly restsOn: readonly string[];
  readonly evidence: readonly Evidence[];
};

export type Explanation = { readonly causes: readonly string[]; readonly probability: number };

/** Sizes outside `beyond` are ruled out at 95 %. */
export type Exclusion = { readonly cause: string; readonly beyond: readonly [number, number]; readonly unit: string };

export type NextCheck = {
  readonly check: string;
  readonly text: string;
  readonly informationBits: number;
  readonly minutes: number;
  readonly settles: readonly string[];
};

export type PointResult = {
  readonly id: number;
  readonly recording: number;
  readonly start_s: number;
  readonly end_s: number;
  readonly states: readonly string[];
  readonly speed_rpm: number | null;
  readonly manifoldPressure_kPa: number | null;
  readonly censored: readonly string[];
  /**
   * What each witness says of the air into the cylinders: the meter as read, the pressure with the reconciled breathing
   * of this engine, the fuel side as metered. ln(massFlow / air) is the witness's departure from the common answer.
   */
  readonly witnesses: {
    readonly [id in WitnessId]?: { readonly massFlow_g_per_s: number; readonly relativeSd: number };
  };
  readonly air_g_per_s: number | null;
  readonly air_low90: number | null;
  readonly air_high90: number | null;
};

export type MeterCurveResult = {
  readonly axis_g_per_s: readonly number[];
  readonly values: readonly number[];
  readonly low90: readonly number[];
  readonly high90: readonly number[];
  readonly evidence: readonly number[];
};

export type BreathingResult = {
  readonly axisSpeed_rpm: readonly number[];
  readonly axisPressure_kPa: readonly number[];
  readonly values: readonly (readonly number[])[];
  readonly low90: readonly (readonly number[])[];
  readonly high90: readonly (readonly number[])[];
  readonly evidence: readonly (readonly number[])[];
};

export type AssumptionResult = {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly reason: string;
  readonly sensitivity: string;
};

export type ResultWarning = { readonly code: string; readonly text: string };

export type AirtallyResult = {
  readonly format: "airtally-result/1";
  readonly toolVersion: string;
  readonly seed: number;
  readonly answer: Answer;
  readonly warning: string | null;
  readonly healthyProbability: number;
  readonly unexplainedProbability: number;
  readonly othersProbability: number;
  readonly findings: readonly Finding[];
  readonly explanations: readonly Explanation[];
  readonly inseparable: readonly (readonly string[])[];
  readonly excluded: readonly Exclusion[];
  readonly nextChecks: readonly NextCheck[];
  readonly operatingPoints: readonly PointResult[];
  readonly meterCurve: MeterCurveResult | null;
  readonly breathing: BreathingResult | null;
  readonly assumptions: readonly AssumptionResult[];
  readonly notVisited: readonly { readonly region: string; readonly leavesOpen: readonly string[] }[];
  readonly recordings: readonly { readonly name: string; readonly sha256: string }[];
  readonly warnings: readonly ResultWarning[];
};

/**
 * What the page draws beside the result: sentences, the timeline, signatures over the evidence, the channels recognised.
 * Not part of the fixed result file; made by the same path in the same run, so that page and file can't disagree.
 */
export type Outcome = { readonly result: AirtallyResult; readonly view: View };

export type View = {
  /** one sentence under the word, and the paragraph below it */
  readonly headline: string;
  readonly summary: string;
  readonly meansNot: string;
  /** what could have made this recording, most probable first, told so that causes which look alike stand for one another */
  readonly ways: readonly WayView[];
  readonly engine: EngineView;
  readonly stations: readonly StationView[];
  /** besides the causes it may hold "healthy" and "unexplained", for what speaks for and against those */
  readonly causes: { readonly [cause: string]: CauseView };
  /** overlay of the most probable causes: what each would do to a witness along the air flow */
  readonly signatures: readonly SignatureView[];
  readonly timelines: readonly TimelineView[];
  readonly channels: readonly (readonly ChannelView[])[];
  readonly recognitionWarnings: readonly (readonly ResultWarning[])[];
  /** the checks of result.nextChecks, told in full */
  readonly checks: { readonly [check: string]: CheckView };
  /** workshop checks that were entered, in their order */
  readonly made: readonly MadeView[];
  readonly cautions: readonly string[];
  /** where the job's recordings are of differently named visits: the answer is about the last, this is about all */
  readonly comparison?: ComparisonView;
};

/** One fault, or two at once; each part holds the titles of the causes that can't be told apart there, most probable first. */
export type WayView = { readonly parts: readonly (readonly string[])[]; readonly probability: number };

export type ComparisonView = {
  /** what changed from the first visit to the last, for the customer */
  readonly sentence: string;
  /** in their order, each weighed on its own */
  readonly visits: readonly VisitView[];
};

export type LoadRegion = "idle" | "part load" | "full load";

export type VisitView = {
  readonly name: string;
  /** names of its recordings */
  readonly recordings: readonly string[];
  readonly answer: Answer;
  readonly headline: string;
  readonly healthyProbability: number;
  /** the cause that led, with the titles of those that cannot be told from it; null where none did */
  readonly leading: {
    readonly cause: string;
    readonly title: string;
    readonly bank: 1 | 2 | null;
    readonly probability: number;
    readonly alike: readonly string[];
    readonly size: Size;
  } | null;
  /** ln(witness / common answer), mean and standard deviation over the points of a region */
  readonly departures: readonly {
    readonly witness: WitnessId;
    readonly region: LoadRegion;
    readonly departure: number;
    readonly sd: number;
    readonly points: number;
  }[];
};

export type EngineView = {
  /** "1998 cm3, 4 cylinders, petrol, dosed by the air meter" */
  readonly sentence: string;
  readonly note: string | null;
  readonly meterKinds: readonly string[];
  readonly banks: 1 | 2;
  readonly boosted: boolean;
  readonly egr: boolean;
  readonly throttle: boolean;
  readonly cylinders: number;
  /** where the injectors are drawn; null where not stated (then at the port) */
  readonly injection: "port" | "direct" | null;
  /** the control probe; null where not stated */
  readonly probe: "none" | "narrow" | "wide" | null;
  /** every line of the engine file that the answer leans on, known or not, in the order of the form */
  readonly facts: readonly EngineFact[];
};

/** `value` null: not stated; `cost` then says what not knowing it costs ("breathing assumed within 0.6 to 1.0"). */
export type EngineFact = { readonly label: string; readonly value: string | null; readonly cost: string | null };

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

export type StationView = {
  readonly station: Station;
  readonly label: string;
  /** "-13 % +- 2 %", the 90 % interval; null where this station has no witness */
  readonly value: string | null;
  readonly detail: string;
  /** causes with at least 5 % that live here, most probable first */
  readonly causes: readonly { readonly cause: string; readonly probability: number }[];
};

export type CauseView = {
  readonly id: string;
  /** "Air enters after the throttle" */
  readonly title: string;
  readonly station: Station;
  /** what speaks for and against, one sentence */
  readonly speaks: string;
};

export type SignatureView = {
  readonly cause: string;
  readonly witness: WitnessId;
  readonly label: string;
  /** g/s, ascending; departure as ln ratio */
  readonly flow_g_per_s: readonly number[];
  readonly departure: readonly number[];
  readonly low90: readonly number[];
  readonly high90: readonly number[];
};
