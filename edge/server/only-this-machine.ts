/**
 * Refuses every request that this machine's own browser page did not make: a Host that is not loopback (a foreign name
 * pointed at this machine), an Origin or Sec-Fetch-Site from elsewhere, and a POST without the app's own header.
 */
import type { MiddlewareHandler } from "hono";
import { failure } from "../../src/quantities/index.ts";
import { APP_HEADER } from "./contract.ts";
import { errorAnswer } from "./error-answer.ts";

const LOOPBACK = new Set(["127.0.0.1", "localhost", "[::1]"]);

export const onlyThisMachine: MiddlewareHandler = async (c, next) => {
  const host = c.req.header("host") ?? new URL(c.req.url).host;
  if (!LOOPBACK.has(host.replace(/:\d+$/, "").toLowerCase())) {
    return errorAnswer(c, 403, refused("foreign-host", `This server does not answer to the name "${host}".`));
  }
  const site = c.req.header("sec-fetch-site");
  const origin = c.req.header("origin");
  const sameOrigin = origin === undefined || origin === `http://${host}`;
  const isOwnPage = sameOrigin && (site === undefined || site === "same-origin" || site === "none");
  // Following a link to the app is harmless; everything else from another page is not this app's.
  const isLink = c.req.method === "GET" && c.req.header("sec-fetch-mode") === "navigate" && c.req.path === "/";
  if (!isOwnPage && !isLink) {
    return errorAnswer(c, 403, refused("other-page", "This request came from another page."));
  }
  if (c.req.method === "POST" && c.req.header(APP_HEADER) === undefined) {
    return errorAnswer(c, 403, refused("not-the-app", `A POST must carry the header ${APP_HEADER}.`));
  }
  return next();
};

function refused(reason: string, message: string) {
  return failure(reason, message, "Open the address that airtally printed, on this machine.");
}
