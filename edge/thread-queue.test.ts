import { Worker } from "node:worker_threads";
import { afterEach, expect, it } from "vitest";
import { type ThreadQueue, threadQueue } from "./thread-queue.ts";

/** A real thread: "spin" never ends, "fail" throws, "leave" ends the thread, "secret" answers with what is no data, all else is answered with itself. */
const CODE = `
  const { parentPort } = require("node:worker_threads");
  parentPort.on("message", (said) => {
    if (said === "spin") for (;;);
    if (said === "fail") throw new Error("broken");
    if (said === "leave") process.exit(7);
    if (said === "secret") return Promise.reject(new DOMException("no data", "DataCloneError"));
    parentPort.postMessage(said);
  });
`;

const queues: ThreadQueue[] = [];
afterEach(async () => {
  for (const queue of queues.splice(0)) await queue.close();
});

function newQueue() {
  const opened: Worker[] = [];
  const queue = threadQueue(() => {
    const worker = new Worker(CODE, { eval: true });
    opened.push(worker);
    return worker;
  });
  queues.push(queue);
  return { queue, opened };
}

const answer = (value: unknown) => ({ ok: true, value });

it("answers one after the other, by one thread", async () => {
  const { queue, opened } = newQueue();
  const ended: unknown[] = [];
  await Promise.all(["a", "b", "c"].map((said) => queue.ask(said).then((got) => ended.push(got))));
  expect(ended).toEqual([answer("a"), answer("b"), answer("c")]);
  expect(opened).toHaveLength(1);
});

it("ends work that runs when it is cancelled, with its thread, and goes on to the next", async () => {
  const { queue, opened } = newQueue();
  const abort = new AbortController();
  const endless = queue.ask("spin", abort.signal);
  const behind = queue.ask("b");
  const gone = new Promise((resolve) => opened[0]!.once("exit", resolve));
  setTimeout(() => abort.abort(), 50);
  expect(await endless).toMatchObject({ ok: false, reason: "cancelled" });
  expect(await behind).toEqual(answer("b"));
  await gone;
  expect(opened).toHaveLength(2);
});

it("takes cancelled work out of the queue and leaves what runs alone", async () => {
  const { queue, opened } = newQueue();
  const abort = new AbortController();
  const [first, second, third] = [queue.ask("a"), queue.ask("spin", abort.signal), queue.ask("c")];
  abort.abort();
  expect(await second).toMatchObject({ ok: false, reason: "cancelled" });
  expect(await Promise.all([first, third])).toEqual([answer("a"), answer("c")]);
  expect(await queue.ask("d", AbortSignal.abort())).toMatchObject({ ok: false, reason: "cancelled" });
  expect(opened).toHaveLength(1);
});

it("does not end later work when the signal of work that is done fires", async () => {
  const { queue, opened } = newQueue();
  const abort = new AbortController();
  expect(await queue.ask("a", abort.signal)).toEqual(answer("a"));
  const next = queue.ask("b");
  abort.abort();
  expect(await next).toEqual(answer("b"));
  expect(opened).toHaveLength(1);
});

it("tells a fault in the thread, or its end, and answers the next by another thread", async () => {
  const { queue } = newQueue();
  await expect(queue.ask("fail")).rejects.toThrow("broken");
  await expect(queue.ask("secret")).rejects.toThrow(Error);
  await expect(queue.ask("leave")).rejects.toThrow("ended with 7");
  expect(await queue.ask("b")).toEqual(answer("b"));
});

it("cancels all when it is closed", async () => {
  const { queue } = newQueue();
  const all = [queue.ask("spin"), queue.ask("b")];
  await queue.close();
  expect((await Promise.all(all)).map((one) => one.ok)).toEqual([false, false]);
});
