/**
 * One thread that works on one thing after the other, so that whoever hands it work stays free to listen. Work that waits or runs is
 * cancelled by its signal: what runs is ended with its thread, and the next gets a new one.
 */
import type { Worker } from "node:worker_threads";
import { failure, type Result, success } from "../src/quantities/index.ts";

export type ThreadQueue = {
  /** What the thread answers to the message; a fault in the thread rejects. */
  readonly ask: (message: unknown, signal?: AbortSignal) => Promise<Result<unknown, "cancelled">>;
  readonly close: () => Promise<void>;
};

type Work = {
  readonly message: unknown;
  readonly resolve: (answer: Result<unknown, "cancelled">) => void;
  readonly reject: (error: Error) => void;
};

const UNTOLD = "The working thread failed and could not tell why; its answer may be no plain data.";

/** `open` starts a thread that answers each message with one message. */
export function threadQueue(open: () => Worker): ThreadQueue {
  const waiting: Work[] = [];
  let running: Work | null = null;
  let thread: Worker | null = started();

  function started(): Worker {
    const worker = open();
    worker.unref(); // a thread without work keeps no process alive
    worker.on("message", (value) => {
      if (worker === thread) finish((work) => work.resolve(success(value)));
    });
    // An answer that is no plain data arrives here as an error that is not even an Error.
    worker.on("error", (error: unknown) => lose(worker, error instanceof Error ? error : new Error(UNTOLD)));
    worker.on("exit", (code) => lose(worker, new Error(`The working thread ended with ${code}.`)));
    return worker;
  }

  function lose(worker: Worker, error: Error): void {
    if (worker !== thread) return;
    thread = null;
    finish((work) => work.reject(error));
  }

  function finish(end: (work: Work) => void): void {
    const work = running;
    running = null;
    if (work !== null) end(work);
    next();
  }

  function next(): void {
    if (running !== null) return;
    running = waiting.shift() ?? null;
    if (running === null) return;
    thread ??= started();
    thread.postMessage(running.message);
  }

  function cancel(work: Work): void {
    const place = waiting.indexOf(work);
    if (place >= 0) waiting.splice(place, 1);
    work.resolve(failure("cancelled", "The work was cancelled.", "Ask again."));
    if (work !== running) return;
    void thread?.terminate();
    thread = null;
    finish(() => {});
  }

  return {
    ask: (message, signal) =>
      new Promise((resolve, reject) => {
        const work: Work = { message, resolve, reject };
        waiting.push(work);
        if (signal?.aborted === true) return cancel(work);
        signal?.addEventListener("abort", () => cancel(work), { once: true });
        next();
      }),
    close: async () => {
      const worker = thread;
      thread = null;
      for (const work of [...waiting, ...(running === null ? [] : [running])]) cancel(work);
      await worker?.terminate();
    },
  };
}
