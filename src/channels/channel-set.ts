/** What a recording holds once it is understood: channels in SI, each on its own time stamps, and what was not understood. */
import type { Channel, SiUnit, Warning } from "../quantities/index.ts";
import type { QuantityId } from "./quantity-id.ts";

/**
 * measured: a witness may use it. computed: equals a formula of other channels to rounding, so it is no witness.
 * dead: a sensor that does not move or reads the impossible. set-point: what was wanted, not what was.
 */
export type Standing = "measured" | "computed" | "dead" | "set-point";

export type RecognisedChannel<Unit extends SiUnit = SiUnit> = Channel<Unit> & {
  readonly quantity: QuantityId;
  readonly bank: 1 | 2 | null;
  /** 1 for the first channel of this quantity and bank, 2 for the next ... */
  readonly instance: number;
  readonly source: {
    /** 1 for the first column of the file */
    readonly column: number;
    /** as in the file, unit included */
    readonly header: string;
    readonly unitText: string | null;
    /** as a channel list may write it ("kPa gauge", "AFR", "factor") */
    readonly unitUsed: string;
  };
  /** smallest step between different values, SI; null where the values look continuous */
  readonly resolution: number | null;
  /** s between two real readings of this channel (median) */
  readonly pollInterval: number;
  /** s, how far a time stamp may be off after polling was undone (half width) */
  readonly timeSkew: number;
  /** 0 to 1 */
  readonly confidence: number;
  /** why it was recognised so, in words */
  readonly reasons: readonly string[];
  readonly standing: Standing;
  readonly standingReason: string | null;
};

export type UnrecognisedColumn = {
  readonly column: number;
  readonly header: string;
  readonly unitText: string | null;
  /** candidates below the threshold, best first; empty where nothing fits */
  readonly candidates: readonly { readonly quantity: QuantityId; readonly confidence: number }[];
  readonly reason: string;
};

/** Rows of one unbroken passage of time: gaps, resets and backward steps split, they are never bridged. */
export type Stretch = { readonly start: number; readonly end: number; readonly why: string | null };

export type ChannelSet = {
  readonly channels: readonly RecognisedChannel[];
  readonly unrecognised: readonly UnrecognisedColumn[];
  readonly stretches: readonly Stretch[];
  /** s */
  readonly duration: number;
  readonly rows: number;
  /** how time was found, in words ("clock time in column 1, step 0.09 s") */
  readonly timeBasis: string;
  readonly warnings: readonly Warning[];
};
