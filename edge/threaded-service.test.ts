/** The server over a real thread: it listens while the thread works, and a page that leaves ends the work. */
import { request } from "node:http";
import { Worker } from "node:worker_threads";
import { afterAll, beforeAll, expect, it } from "vitest";
import { FIXTURE_SERVICE } from "../test/journeys/fixture-service.ts";
import { APP_HEADER, FIELD } from "./server/contract.ts";
import { createApp, type Listening, listen } from "./server/index.ts";
import { threadedService } from "./threaded-service.ts";

/** In place of work-thread.ts: works for ever where the engine is called "endless", else tells what it was asked. */
const CODE = `
  const { parentPort } = require("node:worker_threads");
  parentPort.on("message", (job) => {
    if (job.request?.engineText === "endless") for (;;);
    const recording = job.recording ?? job.request.recordings[0];
    const message = [job.kind, recording.name, recording.bytes.length].join(" ");
    parentPort.postMessage({ ok: false, reason: "told", message, remedy: "" });
  });
`;

const opened: Worker[] = [];
const service = threadedService(FIXTURE_SERVICE, () => {
  const worker = new Worker(CODE, { eval: true });
  opened.push(worker);
  return worker;
});
let server: Listening;
const faults: Error[] = [];
beforeAll(async () => {
  const app = createApp({ service, version: "1.2.3", staticFolder: null, onFault: (error) => faults.push(error) });
  server = await listen(app, 47_320);
});
afterAll(async () => {
  await service.close();
  await server.close();
});

function check(engine: string, signal?: AbortSignal) {
  const body = new FormData();
  body.append(FIELD.engine, engine);
  body.append(FIELD.recording, new File(["12345"], "a.csv"));
  return fetch(`${server.url}api/check`, {
    method: "POST",
    body,
    headers: { [APP_HEADER]: "1" },
    ...(signal === undefined ? {} : { signal }),
  });
}
const told = async (response: Response) => (await response.json()).error.message;

it("answers others while a check runs, queues the next check, and ends the check whose page has left", async () => {
  const abort = new AbortController();
  const left = expect(check("endless", abort.signal)).rejects.toThrow(/abort/);
  const gone = new Promise((resolve) => opened[0]!.once("exit", resolve));
  await new Promise((resolve) => setTimeout(resolve, 100));
  let answered = false;
  const second = check("{}").then((response) => {
    answered = true;
    return told(response);
  });
  const about = await fetch(`${server.url}api/about`);
  expect((await about.json()).version).toBe("1.2.3");
  expect(answered).toBe(false);
  abort.abort();
  await left;
  expect(await second).toBe("check a.csv 5");
  await gone;
  expect(opened).toHaveLength(2);
});

it("has recordings described in the thread too, each with its own answer", async () => {
  const body = new FormData();
  for (const name of ["a.csv", "b.csv"]) body.append(FIELD.recording, new File(["123"], name));
  const response = await fetch(`${server.url}api/describe`, { method: "POST", body, headers: { [APP_HEADER]: "1" } });
  const { recordings } = await response.json();
  expect(recordings.map((one: { message: string }) => one.message)).toEqual(["describe a.csv 3", "describe b.csv 3"]);
});

it("takes a page that leaves in the middle of its upload for no fault of its own", async () => {
  const headers = { [APP_HEADER]: "1", "content-type": "multipart/form-data; boundary=x", "content-length": "5000" };
  const upload = request(`${server.url}api/check`, { method: "POST", headers });
  const closed = new Promise((resolve) => upload.once("close", resolve));
  upload.once("error", () => {}); // the socket is torn by this side itself
  upload.write('--x\r\ncontent-disposition: form-data; name="engine"\r\n\r\nen');
  await new Promise((resolve) => setTimeout(resolve, 100));
  upload.destroy();
  await closed;
  expect((await fetch(`${server.url}api/about`)).status).toBe(200);
  await new Promise((resolve) => setTimeout(resolve, 100));
  expect(faults).toEqual([]);
});
