/**
 * Every request and response between the local app and its server: the only file of the edges that the app may import.
 *
 *   GET  /api/about            AboutAnswer
 *   GET  /api/demo             DemoAnswer            the demo job, already answered
 *   GET  /api/engine-template  EngineTemplateAnswer
 *   POST /api/describe         DescribeAnswer        multipart: FIELD.recording (one or more), FIELD.channels (optional)
 *   POST /api/check            CheckAnswer           multipart: the same, and FIELD.engine
 *   GET  /api/reports/:id      text/html             one self-contained page; ReportQuery in the address
 *
 * Anything that goes wrong is an ErrorAnswer with a status of 400 or above: 400 a request that makes no sense, 403 from
 * elsewhere, 404 not there, 413 too large, 422 read but not usable (the message says where and what to do), 500 a fault of
 * the tool itself.
 */
import type { ChannelView, Outcome, ResultWarning } from "../../src/job/result.ts";
import type { Failure } from "../../src/quantities/index.ts";

/** Names of the parts of an upload. */
export const FIELD = { recording: "recording", engine: "engine", channels: "channels" } as const;

/** Every POST carries this header: a page from elsewhere cannot send it without asking first, and is refused. */
export const APP_HEADER = "x-airtally";

export type AboutAnswer = {
  readonly version: string;
  readonly uploadLimit_bytes: number;
  /** what a column can be pinned to */
  readonly quantities: readonly QuantityChoice[];
};

export type QuantityChoice = {
  readonly id: string;
  readonly name: string;
  /** units it may be given in, the usual one first; empty where it has none */
  readonly units: readonly string[];
  /** true where each of two banks may have one */
  readonly banked: boolean;
};

export type CheckAnswer = {
  /** names the outcome for /api/reports; kept until the server ends or twenty newer ones came */
  readonly id: string;
  readonly outcome: Outcome;
};

export type DemoAnswer = CheckAnswer & {
  readonly title: string;
  readonly complaint: string;
  /** says plainly that everything is invented */
  readonly note: string;
  /** the engine file of the demo, to start one's own from */
  readonly engineText: string;
};

export type EngineTemplateAnswer = { readonly text: string };

export type RecordingSummary = {
  readonly name: string;
  readonly rows: number;
  readonly duration_s: number;
  readonly channels: readonly ChannelView[];
  readonly warnings: readonly ResultWarning[];
};

/** One for each recording sent, in their order; a recording that cannot be read does not hide the others. */
export type DescribeAnswer = {
  readonly recordings: readonly ({ readonly ok: true; readonly value: RecordingSummary } | Failure)[];
};

export type ReportQuery = { readonly title?: string; readonly complaint?: string; readonly date?: string };

export type ErrorAnswer = { readonly error: Omit<Failure, "ok"> };
