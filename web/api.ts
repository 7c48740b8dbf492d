/** The server, spoken to by contract alone. Every answer is a value or a failure that says what to do. */
import {
  type AboutAnswer,
  APP_HEADER,
  type CheckAnswer,
  type DemoAnswer,
  type DescribeAnswer,
  type EngineTemplateAnswer,
  type ErrorAnswer,
  FIELD,
  type ReportQuery,
} from "../edge/server/contract.ts";
import { type Failure, failure, type Result, success } from "../src/quantities/index.ts";

export const about = () => ask<AboutAnswer>("/api/about");
export const demo = () => ask<DemoAnswer>("/api/demo");
export const engineTemplate = () => ask<EngineTemplateAnswer>("/api/engine-template");

export type CheckParts = {
  readonly recordings: readonly File[];
  readonly engineText: string;
  readonly channelsText: string | null;
};

export function check(parts: CheckParts, signal: AbortSignal): Promise<Result<CheckAnswer>> {
  const form = uploadOf(parts.recordings, parts.channelsText);
  form.append(FIELD.engine, parts.engineText);
  return ask<CheckAnswer>("/api/check", { body: form, signal });
}

export function describe(recordings: readonly File[], signal: AbortSignal): Promise<Result<DescribeAnswer>> {
  return ask<DescribeAnswer>("/api/describe", { body: uploadOf(recordings, null), signal });
}

/** The address of the report of an answered check. */
export function reportAddress(id: string, query: ReportQuery): string {
  const told = Object.entries(query).filter(([, value]) => value !== undefined && value !== "");
  return `/api/reports/${encodeURIComponent(id)}?${new URLSearchParams(told)}`;
}

/** The reason of a failure that only says that the user cancelled. */
export const CANCELLED = "cancelled";

function uploadOf(recordings: readonly File[], channelsText: string | null): FormData {
  const form = new FormData();
  for (const file of recordings) form.append(FIELD.recording, file, file.name);
  if (channelsText !== null) form.append(FIELD.channels, channelsText);
  return form;
}

type Sent = { readonly body: FormData; readonly signal: AbortSignal };

async function ask<Answer>(path: string, sent?: Sent): Promise<Result<Answer>> {
  const request: RequestInit =
    sent === undefined ? {} : { method: "POST", headers: { [APP_HEADER]: "1" }, body: sent.body, signal: sent.signal };
  try {
    const response = await fetch(path, request);
    if (response.ok) return success((await response.json()) as Answer);
    return await failureOf(response);
  } catch (error) {
    if (sent?.signal.aborted === true) return failure(CANCELLED, "Cancelled.", "Nothing was changed.");
    // A TypeError is all that fetch says of a server that is gone or a file that moved while it was sent.
    if (!(error instanceof TypeError)) throw error;
    return failure(
      "no-answer",
      "The tool on this machine does not answer, or a file changed while it was read.",
      "See that airtally still runs in its terminal (npm start), choose the files again, and try once more.",
    );
  }
}

async function failureOf(response: Response): Promise<Failure> {
  if ((response.headers.get("content-type") ?? "").startsWith("application/json")) {
    const { error } = (await response.json()) as ErrorAnswer;
    return { ok: false, ...error };
  }
  return failure("no-answer", `The tool answered with status ${response.status}.`, "Reload the page and try again.");
}
