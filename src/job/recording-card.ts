/** What `airtally card` answers (format "airtally-card/1"). Types only, as result.ts; the schema is in standard-recording/. */

export type RecordingCard = {
  readonly format: "airtally-card/1";
  readonly toolVersion: string;
  readonly title: string;
  /** what it is for, in a sentence */
  readonly lead: string;
  readonly seconds: number;
  readonly before: readonly string[];
  readonly channels: readonly string[];
  readonly parts: readonly CardPart[];
  readonly cautions: readonly string[];
};

export type CardPart = {
  readonly id: string;
  readonly title: string;
  readonly seconds: number;
  readonly do: string;
  /** what stays open if it is skipped */
  readonly leavesOpen: readonly { readonly cause: string; readonly title: string }[];
  readonly cautions: readonly string[];
};
