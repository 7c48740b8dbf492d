/**
 * server: the local app over HTTP on this machine alone.
 * In: functions of the job room, a version, the folder of the built page. Out: a hono app, and a listening address.
 * Refuses: requests from other machines, other names and other pages; uploads beyond its limit.
 */
export { type AppOptions, createApp, UPLOAD_LIMIT_BYTES } from "./app.ts";
export type { RecordingSummary } from "./contract.ts";
export { type Listening, listen } from "./listen.ts";
export { openBrowser } from "./open-browser.ts";
export type { AnsweredDemo, AppService, CheckRequest, UploadedRecording } from "./service.ts";
