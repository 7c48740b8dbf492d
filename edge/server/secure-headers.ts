/** Headers on every answer: nothing from elsewhere may load, frame or read it. */
import type { MiddlewareHandler } from "hono";

const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join("; ");

export const secureHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  c.header("content-security-policy", POLICY);
  c.header("x-content-type-options", "nosniff");
  c.header("referrer-policy", "no-referrer");
  c.header("cross-origin-opener-policy", "same-origin");
  c.header("cross-origin-resource-policy", "same-origin");
  if (c.req.path.startsWith("/api/")) c.header("cache-control", "no-store");
};
