/** What the server needs done. The wiring hands in the functions of the job room; the server itself knows only HTTP. */
import type { Outcome } from "../../src/job/result.ts";
import type { Result } from "../../src/quantities/index.ts";
import type { QuantityChoice, RecordingSummary } from "./contract.ts";

type Eventually<Value> = Value | Promise<Value>;

export type UploadedRecording = { readonly name: string; readonly bytes: Uint8Array };

export type CheckRequest = {
  readonly recordings: readonly UploadedRecording[];
  readonly engineText: string;
  readonly channelsText: string | null;
};

export type AnsweredDemo = {
  readonly title: string;
  readonly complaint: string;
  readonly note: string;
  readonly engineText: string;
  readonly outcome: Outcome;
};

export type AppService = {
  /** The signal says that nobody waits for the answer any more; so for `describe`. */
  readonly check: (request: CheckRequest, signal?: AbortSignal) => Eventually<Result<Outcome>>;
  readonly describe: (
    recording: UploadedRecording,
    channelsText: string | null,
    signal?: AbortSignal,
  ) => Eventually<Result<RecordingSummary>>;
  readonly demo: () => Eventually<Result<AnsweredDemo>>;
  readonly engineTemplate: () => string;
  readonly quantities: () => readonly QuantityChoice[];
};
