/** A failure as an HTTP answer: its reason, message and remedy, never a stack. */
import type { Context } from "hono";
import type { ContentfulStatusCode } from "hono/utils/http-status";
import type { Failure } from "../../src/quantities/index.ts";
import type { ErrorAnswer } from "./contract.ts";

export function errorAnswer(c: Context, status: ContentfulStatusCode, { ok: _, ...error }: Failure): Response {
  const answer: ErrorAnswer = { error };
  return c.json(answer, status);
}
