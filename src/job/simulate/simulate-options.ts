/** The options of `airtally simulate` as they are written; what is left out is `SIMULATE_DEFAULTS`. */
export type SimulateOptions = {
  readonly family?: string;
  /** which engine of the family: its parts differ within healthy tolerances */
  readonly engineNumber?: string;
  /** share of those tolerances: 0 is an engine as drawn */
  readonly tolerances?: string;
  /** "narrow" or "wide": another control probe than the family's */
  readonly probe?: string;
  /** each as "manifold-leak=3.5 mm2" */
  readonly faults?: readonly string[];
  readonly protocol?: string;
  /** of the whole recording */
  readonly duration?: string;
  /** one of these two */
  readonly altitude?: string;
  readonly barometer?: string;
  readonly temperature?: string;
  readonly humidity?: string;
  readonly recorder?: string;
  /** readings a second of the tester, rows a second of the logger */
  readonly rate?: string;
  readonly rows?: string;
  readonly names?: string;
  readonly units?: string;
  readonly delimiter?: string;
  readonly decimalMark?: string;
  readonly time?: string;
  readonly lineEnd?: string;
  /** how often a minute the recording breaks off, and for how long on average */
  readonly dropouts?: string;
  readonly dropoutLength?: string;
  /** each as "MAP from 60 s for 30 s" */
  readonly stuck?: readonly string[];
  readonly seed?: string;
};

export const SIMULATE_DEFAULTS = {
  family: "petrol-with-meter",
  tolerances: "1",
  protocol: "standard-and-road",
  altitude: "100 m",
  temperature: "18 degC",
  humidity: "50 %",
  recorder: "tester",
  rows: "each-reading",
  names: "long",
  units: "brackets",
  decimalMark: "point",
  time: "seconds",
  lineEnd: "lf",
  dropouts: "0",
  dropoutLength: "2 s",
  seed: "1",
} as const satisfies SimulateOptions;
