/** A recording as the page shows it: what was recognised, and when the engine did what. Types only, as result.ts. */

export type TimelineView = {
  readonly recording: number;
  readonly name: string;
  readonly duration_s: number;
  /** a few channels, thinned to at most 1,200 pairs of extremes, each on its own time stamps */
  readonly traces: readonly {
    readonly quantity: string;
    readonly label: string;
    readonly unit: string;
    readonly time_s: readonly number[];
    readonly values: readonly (number | null)[];
  }[];
  readonly states: readonly { readonly state: string; readonly start_s: number; readonly end_s: number }[];
  readonly steady: readonly { readonly point: number; readonly start_s: number; readonly end_s: number }[];
};

export type ChannelView = {
  /** 1 for the first column of the file */
  readonly column: number;
  readonly header: string;
  readonly quantity: string | null;
  readonly quantityName: string | null;
  readonly unit: string | null;
  readonly standing: string;
  readonly confidence: number;
  readonly reasons: readonly string[];
  readonly interval_s: number | null;
  readonly low: number | null;
  readonly high: number | null;
};
