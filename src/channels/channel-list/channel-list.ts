/**
 * What the user says of the columns (format "airtally-channels/1"): pins a quantity to a column, corrects what was
 * recognised, or leaves a column out. Columns not named are recognised as usual.
 */
import type { QuantityId } from "../quantity-id.ts";

export const CHANNEL_LIST_FORMAT = "airtally-channels/1";

export type ChannelPin = {
  /** 1 for the first column; null: found by its header */
  readonly column: number | null;
  /** as in the file; null: found by its number */
  readonly header: string | null;
  /** null: left out */
  readonly quantity: QuantityId | null;
  /** as people write it; null: as stated in the file, else the usual one */
  readonly unit: string | null;
  readonly bank: 1 | 2 | null;
};

export type ChannelList = {
  readonly note: string | null;
  readonly channels: readonly ChannelPin[];
};
